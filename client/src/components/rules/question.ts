import type { BirthMode, HerMovement, Question } from '@/api/types';

/** A question about nobody in particular, as it stands in the address. */
export interface Asking {
  stage?: string;
  due?: string;
  on?: string;
  birth?: BirthMode;
  /** Codes with commas between. */
  factors?: string;
  leaveOut?: string;
  effort?: number;
  class?: number;
}

export const birthModes: readonly BirthMode[] = ['vaginal', 'assisted', 'caesarean', 'unknown'];

const text = (search: Record<string, unknown>, name: string) => {
  const value = search[name];
  return typeof value === 'string' && value !== '' ? value : undefined;
};

const day = (search: Record<string, unknown>, name: string) => {
  const value = text(search, name);
  return value !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(value) ? value : undefined;
};

const whole = (search: Record<string, unknown>, name: string, most: number) => {
  const value = search[name];
  return typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= most
    ? value
    : undefined;
};

export const questionIn = (search: Record<string, unknown>): Asking => ({
  stage: text(search, 'stage'),
  due: day(search, 'due'),
  on: day(search, 'on'),
  birth: birthModes.find((mode) => mode === search.birth),
  factors: text(search, 'factors'),
  leaveOut: text(search, 'leaveOut'),
  effort: whole(search, 'effort', 10),
  class: whole(search, 'class', Number.MAX_SAFE_INTEGER),
});

export const codesOf = (joined?: string) => joined?.split(',').filter((code) => code !== '') ?? [];

export const joined = (codes: readonly string[]) =>
  codes.length === 0 ? undefined : codes.join(',');

/** What the server is asked; nothing until there is a stage or a due date. */
export const questionOf = (asking: Asking, today: string): Question | undefined => {
  const { stage, due, on, birth, factors, leaveOut, effort, class: planId } = asking;
  if (stage === undefined && due === undefined) return undefined;
  return {
    stage: due === undefined ? (stage ?? null) : null,
    dueDate: due ?? null,
    on: on ?? today,
    birthMode: birth ?? null,
    factors: codesOf(factors),
    restrictions: codesOf(leaveOut),
    effortMost: effort ?? null,
    planId: planId ?? null,
  };
};

/** The same day and stage with nothing else known. */
export const nothingKnown = (question: Question): Question => ({
  ...question,
  factors: [],
  restrictions: [],
  effortMost: null,
});

export const asksMore = ({ factors, restrictions, effortMost }: Question) =>
  (factors ?? []).length > 0 || (restrictions ?? []).length > 0 || effortMost != null;

export interface Compared {
  movement: HerMovement;
  /** What becomes of it with nothing else known, where that is something else. */
  otherwise?: HerMovement;
}

/** Each movement beside what it is with nothing known; both answers are about the same plan. */
export const compared = (
  movements: readonly HerMovement[],
  plain: readonly HerMovement[],
): Compared[] => {
  const byPlace = new Map(plain.map((movement) => [movement.position, movement]));
  return movements.map((movement) => {
    const before = byPlace.get(movement.position);
    return before === undefined ||
      (before.verdict === movement.verdict && before.instruction === movement.instruction)
      ? { movement }
      : { movement, otherwise: before };
  });
};
