import type { MovementVerdict, PlanItem, PlanPreview, PreviewedItem } from '@/api/types';
import type { WantedItem } from '@/api/plans';

export interface Together {
  verdict: MovementVerdict;
  instruction: string;
  names: string[];
}

const strictestFirst: readonly MovementVerdict[] = ['leftOut', 'replaced', 'adapted', 'asTaught'];

/** Those who do the same instead, together; the strictest first. */
export function together({ people }: Pick<PreviewedItem, 'people'>): Together[] {
  const groups: Together[] = [];
  for (const { verdict, instruction, called } of people) {
    const same = groups.find(
      (group) => group.verdict === verdict && group.instruction === instruction,
    );
    if (same === undefined) groups.push({ verdict, instruction, names: [called] });
    else same.names.push(called);
  }
  return groups.sort(
    (a, b) => strictestFirst.indexOf(a.verdict) - strictestFirst.indexOf(b.verdict),
  );
}

/** What a preview says of a place, as long as the same movement still stands there. */
export const saidOf = (
  preview: PlanPreview | undefined,
  at: number,
  movement: string,
): PreviewedItem | undefined => {
  const item = preview?.items[at];
  return item?.movement === movement ? item : undefined;
};

/** Names in a sentence: `Ada, Bea and Cleo`. */
export const listed = (names: readonly string[]) =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;

export const wantedOf = (items: readonly PlanItem[]): WantedItem[] =>
  items.map(({ movement, minutes }) => ({ movement, minutes }));
