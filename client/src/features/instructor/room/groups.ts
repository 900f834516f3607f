import type { HerMovement, MovementVerdict, Person } from '@/api/types';
import { differently } from '@/features/instructor/plan/who-does-what';

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
