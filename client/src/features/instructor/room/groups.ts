import type { HerMovement, MovementVerdict, Person } from '@/api/types';
import { differently, throughoutOf } from '@/features/instructor/plan/who-does-what';

type Mover = Pick<Person, 'movements' | 'called'>;

/** People who do the same in place of a movement. */
export interface Group<P> {
  instruction: string;
  verdict: MovementVerdict;
  people: P[];
}

const weight: Record<MovementVerdict, number> = {
  leftOut: 0,
  replaced: 1,
  adapted: 2,
  asTaught: 3,
};

/** People of whom the same words hold through the whole class. */
export interface Always<P> {
  texts: string[];
  people: P[];
}

/**
 * What holds through the whole class, one card for the same people: first for those who take part, then for those who only
 * sit by, of whom each movement says so already.
 */
export function alwaysOf<
  P extends Pick<Person, 'bookingId' | 'verdict' | 'instructions' | 'movements'>,
>(people: readonly P[]): Always<P>[] {
  const cards = new Map<string, Always<P>>();
  for (const { text, people: them } of throughoutOf(people)) {
    const key = them.map(({ bookingId }) => bookingId).join();
    const card = cards.get(key);
    if (card === undefined) cards.set(key, { texts: [text], people: them });
    else card.texts.push(text);
  }
  const sitsBy = ({ people: them }: Always<P>) =>
    them.every(({ verdict }) => verdict === 'notSuitable' || verdict === 'needsClearance');
  return [...cards.values()].sort((a, b) => Number(sitsBy(a)) - Number(sitsBy(b)));
}

/** Those who do something else, together where it is the same, the furthest from the movement first; and the others. */
export function groupsAt<P extends Mover>(people: readonly P[], position: number) {
  const groups = new Map<string, Group<P>>();
  const asTaught: P[] = [];
  for (const person of people) {
    const her: HerMovement | undefined = differently(person, position);
    if (her === undefined) {
      asTaught.push(person);
      continue;
    }
    const key = `${her.verdict} ${her.instruction}`;
    const group = groups.get(key);
    if (group === undefined)
      groups.set(key, { instruction: her.instruction, verdict: her.verdict, people: [person] });
    else group.people.push(person);
  }
  return {
    groups: [...groups.values()].sort((a, b) => weight[a.verdict] - weight[b.verdict]),
    asTaught,
  };
}
