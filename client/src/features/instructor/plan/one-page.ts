import type { Person, Planned } from '@/api/types';
import { differently } from './who-does-what';

/** A way to lay the sheet out: its type, and whether letters stand for instructions. */
export interface Size {
  points: number;
  keyed: boolean;
  /** What holds all through the class is said by whom it is about; its words stand on the roster. */
  elsewhere?: boolean;
}

/**
 * From the most readable on. Words down to 7 pt, then letters with a key, never below 6.5 pt; where letters of many people
 * have much to say, their words are left to the roster, and the sheet says whose they are.
 */
export const sizes: readonly [Size, ...Size[]] = [
  { points: 11, keyed: false },
  ...[10, 9, 8.5, 8, 7.5, 7].map((points) => ({ points, keyed: false })),
  ...[10, 9, 8.5, 8, 7.5, 7, 6.5].map((points) => ({ points, keyed: true })),
  ...[8, 7.5, 7, 6.5].map((points) => ({ points, keyed: true, elsewhere: true })),
];

/** A letter for each instruction, in the order in which they come: a to z, then aa, ab. */
export function keysOf(
  people: readonly Pick<Person, 'movements'>[],
  plan: readonly Pick<Planned, 'position'>[],
): Map<string, string> {
  const keys = new Map<string, string>();
  for (const { position } of plan)
    for (const her of people) {
      const instruction = differently(her, position)?.instruction;
      if (instruction !== undefined && !keys.has(instruction))
        keys.set(instruction, letters(keys.size));
    }
  return keys;
}

const letters = (number: number): string =>
  (number < 26 ? '' : letters(Math.floor(number / 26) - 1)) +
  String.fromCharCode(97 + (number % 26));
