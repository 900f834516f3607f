import type { WantedItem } from '@/api/plans';

/** A movement in a draft; the key tells two of the same kind apart while they are moved about. */
export interface DraftItem extends WantedItem {
  key: string;
}

/** What a draft was made from, so that what somebody else saves meanwhile is noticed. */
export interface Base {
  items: readonly WantedItem[];
  /** The class plan's version. */
  classVersion: number;
  /** The version of each session's own plan, as it was first seen beside this draft. */
  sessionVersions: Readonly<Record<number, number>>;
}

export interface Draft {
  base: Base;
  items: readonly DraftItem[];
  past: readonly (readonly DraftItem[])[];
  future: readonly (readonly DraftItem[])[];
  /** The field whose typing is one step until something else is done. */
  typing?: string;
}

export type Change =
  | { do: 'add'; movement: string; minutes: number }
  | { do: 'remove'; key: string }
  | { do: 'move'; from: number; to: number }
  | { do: 'minutes'; key: string; minutes: number }
  | { do: 'replace'; items: readonly WantedItem[] }
  | { do: 'undo' }
  | { do: 'redo' }
  /** A plan as it is kept: the draft begins anew from it. */
  | { do: 'rebase'; base: Base }
  /** What is kept changed, and she means to save over it all the same. */
  | { do: 'accept'; classVersion: number; sessionVersions: Readonly<Record<number, number>> };

const mostSteps = 100;

let made = 0;
const keyed = ({ movement, minutes }: WantedItem): DraftItem => ({
  movement,
  minutes,
  key: `${movement}-${(made += 1)}`,
});

export const wanted = (items: readonly WantedItem[]): WantedItem[] =>
  items.map(({ movement, minutes }) => ({ movement, minutes }));

export const isSame = (one: readonly WantedItem[], other: readonly WantedItem[]) =>
  one.length === other.length &&
  one.every(
    ({ movement, minutes }, at) =>
      movement === other[at]?.movement && minutes === other[at].minutes,
  );

export const isChanged = ({ base, items }: Draft) => !isSame(base.items, items);

export const minutesOf = (items: readonly WantedItem[]) =>
  items.reduce((sum, { minutes }) => sum + minutes, 0);

export const startFrom = (base: Base): Draft => ({
  base,
  items: base.items.map(keyed),
  past: [],
  future: [],
});

export function changed(draft: Draft, change: Change): Draft {
  const { items, past, future } = draft;
  switch (change.do) {
    case 'add':
      return step(draft, [...items, keyed(change)]);
    case 'remove':
      return step(
        draft,
        items.filter(({ key }) => key !== change.key),
      );
    case 'move':
      return step(draft, moved(items, change.from, change.to));
    case 'minutes': {
      const next = items.map((item) =>
        item.key === change.key ? { ...item, minutes: change.minutes } : item,
      );
      return draft.typing === change.key
        ? { ...draft, items: next }
        : { ...step(draft, next), typing: change.key };
    }
    case 'replace':
      return step(draft, rekeyed(items, change.items));
    case 'undo': {
      const last = past.at(-1);
      return last === undefined
        ? draft
        : { ...quiet(draft), items: last, past: past.slice(0, -1), future: [items, ...future] };
    }
    case 'redo': {
      const [next, ...rest] = future;
      return next === undefined
        ? draft
        : { ...quiet(draft), items: next, past: [...past, items], future: rest };
    }
    case 'rebase':
      return startFrom(change.base);
    case 'accept':
      return {
        ...draft,
        base: {
          ...draft.base,
          classVersion: change.classVersion,
          sessionVersions: change.sessionVersions,
        },
      };
  }
}

const quiet = (draft: Draft): Draft => ({ ...draft, typing: undefined });

function step(draft: Draft, items: readonly DraftItem[]): Draft {
  if (isSame(draft.items, items)) return draft;
  return {
    ...quiet(draft),
    items,
    past: [...draft.past, draft.items].slice(-mostSteps),
    future: [],
  };
}

function moved(items: readonly DraftItem[], from: number, to: number): readonly DraftItem[] {
  const item = items[from];
  if (item === undefined || to < 0 || to >= items.length) return items;
  const rest = items.filter((_, at) => at !== from);
  return [...rest.slice(0, to), item, ...rest.slice(to)];
}

/** What stays in its place keeps its key, so that the page does not jump. */
const rekeyed = (before: readonly DraftItem[], after: readonly WantedItem[]) =>
  after.map((item, at) => {
    const there = before[at];
    return there?.movement === item.movement ? { ...there, minutes: item.minutes } : keyed(item);
  });

/** A draft as it waits in the browser; only what somebody changed is worth keeping. */
export const written = ({ base, items }: Draft) => JSON.stringify({ base, items: wanted(items) });

/** A draft read back, or nothing where what is there is none. */
export function read(text: string | null): Draft | null {
  if (text === null) return null;
  try {
    const { base, items } = JSON.parse(text) as Partial<Draft>;
    if (
      base === undefined ||
      !isList(items) ||
      !isList(base.items) ||
      typeof base.classVersion !== 'number' ||
      typeof base.sessionVersions !== 'object'
    )
      return null;
    return { ...startFrom(base), items: items.map(keyed) };
  } catch {
    return null;
  }
}

const isList = (items: unknown): items is WantedItem[] =>
  Array.isArray(items) &&
  items.every(
    (item: Partial<WantedItem> | null) =>
      typeof item?.movement === 'string' && typeof item.minutes === 'number',
  );
