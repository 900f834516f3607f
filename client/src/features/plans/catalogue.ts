import type { Movement } from '@/api/types';

/** Whether each word typed begins a word of its name, group, position or equipment. */
export function matches(movement: Movement, typed: string): boolean {
  const words = wordsIn(
    [movement.name, movement.groupName, movement.positionName, ...movement.equipment].join(' '),
  );
  return wordsIn(typed).every((part) => words.some((word) => word.startsWith(part)));
}

/** Best first: what is called so comes before what only belongs to it; otherwise the catalogue's order. */
export const found = (movements: readonly Movement[], typed: string): Movement[] => {
  const hits = movements.filter((movement) => matches(movement, typed));
  const parts = wordsIn(typed);
  const named = hits.filter(({ name }) => {
    const words = wordsIn(name);
    return parts.every((part) => words.some((word) => word.startsWith(part)));
  });
  return [...named, ...hits.filter((hit) => !named.includes(hit))];
};

const wordsIn = (text: string) =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^\p{L}\p{N}\s-]/gu, '')
    .split(/[\s-]+/)
    .filter((word) => word !== '');
