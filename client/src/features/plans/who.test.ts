import { describe, expect, it } from 'vitest';
import type { PlanPreview } from '@/api/types';
import { listed, saidOf, together } from './who';

const does = (
  called: string,
  verdict: 'adapted' | 'replaced' | 'leftOut',
  instruction: string,
) => ({
  clientId: called.length,
  called,
  verdict,
  option: null,
  instruction,
});

describe('Those who do something else', () => {
  it('stand together where they do the same, the strictest first', () => {
    expect(
      together({
        people: [
          does('Ada', 'adapted', 'propped up'),
          does('Bea', 'leftOut', 'rest'),
          does('Cleo', 'adapted', 'propped up'),
          does('Dora', 'adapted', 'on fists'),
        ],
      }).map(({ instruction, names }) => [instruction, names]),
    ).toEqual([
      ['rest', ['Bea']],
      ['propped up', ['Ada', 'Cleo']],
      ['on fists', ['Dora']],
    ]);
  });

  it('are told only while the same movement still stands in that place', () => {
    const preview = { items: [{ movement: 'squat' }, { movement: 'bridge' }] } as PlanPreview;
    expect(saidOf(preview, 1, 'bridge')).toBe(preview.items[1]);
    expect(saidOf(preview, 0, 'bridge')).toBeUndefined();
    expect(saidOf(preview, 2, 'bridge')).toBeUndefined();
    expect(saidOf(undefined, 0, 'squat')).toBeUndefined();
  });

  it.each([
    [[], ''],
    [['Ada'], 'Ada'],
    [['Ada', 'Bea'], 'Ada and Bea'],
    [['Ada', 'Bea', 'Cleo'], 'Ada, Bea and Cleo'],
  ])('%j are named in a sentence', (names, words) => {
    expect(listed(names)).toBe(words);
  });
});
