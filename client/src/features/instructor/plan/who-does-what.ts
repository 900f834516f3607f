import type { HerMovement, MovementVerdict, Person, Planned } from '@/api/types';

type Mover = Pick<Person, 'movements'>;

/** What she does instead at this place of the plan; nothing where she does it as taught. */
export const differently = ({ movements }: Mover, position: number | null) =>
  movements.find((her) => her.position === position && her.verdict !== 'asTaught');

/** All she does differently, in the order of the plan. */
export const allDifferently = ({ movements }: Mover): HerMovement[] =>
  movements.filter(({ verdict }) => verdict !== 'asTaught').sort((a, b) => a.position - b.position);

/** The one thing she does differently where it is the same for every movement of a plan. */
export function sameThroughout({ movements }: Mover): HerMovement | undefined {
  const [first, ...rest] = movements;
  if (first === undefined || rest.length === 0 || first.verdict === 'asTaught') return undefined;
  const same = rest.every(
    ({ verdict, instruction }) => verdict === first.verdict && instruction === first.instruction,
  );
  return same ? first : undefined;
}

/**
 * What holds for her through the whole class, such as the words of her letter. Whatever begins with the
 * name of one of her movements is told beside it; all else is told here, so that nothing goes missing.
 */
export const throughTheClass = ({
  instructions,
  movements,
}: Pick<Person, 'instructions' | 'movements'>) =>
  instructions.filter(
    ({ text }) =>
      !movements.some(({ name }) => text.startsWith(`${name}:`) || text.startsWith(`${name},`)),
  );

/** People to whom the same holds through the whole class. */
export interface Throughout<P> {
  text: string;
  people: P[];
}

/** What holds through the whole class, each word once, with those it holds for; what most share comes last. */
export function throughoutOf<P extends Pick<Person, 'instructions' | 'movements'>>(
  people: readonly P[],
): Throughout<P>[] {
  const all = new Map<string, Throughout<P>>();
  for (const person of people)
    for (const { text } of throughTheClass(person)) {
      const known = all.get(text);
      if (known === undefined) all.set(text, { text, people: [person] });
      else known.people.push(person);
    }
  return [...all.values()].sort((a, b) => a.people.length - b.people.length);
}

export const howMany = (people: readonly Mover[], position: number) =>
  people.filter((her) => differently(her, position) !== undefined).length;

export function howManyWords(count: number): string {
  if (count === 0) return 'everybody as taught';
  return count === 1 ? '1 does something else' : `${count} do something else`;
}

/** The place a step away; before the first is nothing chosen, and after the last the last. */
export function stepTo(plan: readonly Planned[], chosen: number | null, step: 1 | -1) {
  const at = plan.findIndex(({ position }) => position === chosen) + step;
  if (at < 0) return null;
  return plan[Math.min(at, plan.length - 1)]?.position ?? null;
}

export interface Cell {
  instruction: string;
  /** None where it is done as taught. */
  verdict?: MovementVerdict;
  /** How many neighbours share it. */
  span: number;
}

/** One row of the printed sheet: neighbours who do the same share a cell; empty is as taught. */
export function rowOf(people: readonly Mover[], position: number): Cell[] {
  const cells: Cell[] = [];
  for (const her of people) {
    const { instruction = '', verdict } = differently(her, position) ?? {};
    const last = cells.at(-1);
    if (verdict !== undefined && last?.verdict === verdict && last.instruction === instruction)
      last.span += 1;
    else cells.push({ instruction, verdict, span: 1 });
  }
  return cells;
}
