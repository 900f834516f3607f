import { describe, expect, it } from 'vitest';
import type { HerMovement } from '@/api/types';
import { keysOf, sizes } from './one-page';

const instead = (position: number, instruction: string): HerMovement => ({
  position,
  name: '',
  verdict: 'adapted',
  instruction,
  reasons: [],
});

describe('The sheet', () => {
  it('is never printed smaller than can be read', () => {
    expect(Math.min(...sizes.map(({ points }) => points))).toBe(6.5);
  });

  it('keeps the words as long as it can', () => {
    expect(sizes.findIndex(({ keyed }) => keyed)).toBe(sizes.filter(({ keyed }) => !keyed).length);
    // What a letter says is left to the roster last of all.
    const first = sizes.findIndex(({ elsewhere }) => elsewhere === true);
    expect(first).toBeGreaterThan(0);
    expect(sizes.slice(first).every(({ elsewhere }) => elsewhere === true)).toBe(true);
  });

  it('gives each instruction one letter, in the order of the plan', () => {
    const plan = [{ position: 1 }, { position: 2 }];
    const people = [
      { movements: [instead(1, 'knee down'), instead(2, 'rest')] },
      { movements: [instead(1, 'slower'), instead(2, 'knee down')] },
    ];
    expect([...keysOf(people, plan)]).toEqual([
      ['knee down', 'a'],
      ['slower', 'b'],
      ['rest', 'c'],
    ]);
  });

  it('goes on with two letters after z, each its own', () => {
    const plan = Array.from({ length: 60 }, (_, i) => ({ position: i }));
    const people = [
      { movements: plan.map(({ position }) => instead(position, `way ${position}`)) },
    ];
    const keys = [...keysOf(people, plan).values()];
    expect([keys[25], keys[26], keys[27], keys[52]]).toEqual(['z', 'aa', 'ab', 'ba']);
    expect(new Set(keys).size).toBe(60);
  });
});
