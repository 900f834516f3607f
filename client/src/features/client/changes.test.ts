import { describe, expect, it } from 'vitest';
import type { Change, ChangedMovement, Choice } from '@/api/types';
import { besides, changeWords, reasonWords, shareWords } from './changes';

const movement = (given: Partial<ChangedMovement>): ChangedMovement => ({
  position: 1,
  name: 'Front plank',
  minutes: 3,
  verdict: 'replaced',
  option: 'Side plank',
  how: '',
  ...given,
});
const change = (count: number, ...texts: string[]): Change => ({
  movements: Array.from({ length: count }, (_, i) => movement({ position: i + 1 })),
  reasons: texts.map((text) => ({ text, source: null, lift: null })),
});

describe('What changes for her', () => {
  it.each([
    [{}, 'Instead of “Front plank” you do “Side plank”.'],
    [{ how: 'knee down' }, 'Instead of “Front plank” you do “Side plank”, knee down.'],
    [{ verdict: 'adapted', option: null, how: 'knee down' }, '“Front plank”: knee down.'],
    [
      { verdict: 'leftOut', option: null },
      'During “Front plank” you rest or breathe for 3 minutes.',
    ],
    [
      { verdict: 'leftOut', option: null, minutes: 1 },
      'During “Front plank” you rest or breathe for a minute.',
    ],
  ] as const)('is said as a sentence: %o', (given, words) => {
    expect(changeWords(movement(given))).toBe(words);
  });

  it('has its reason said once for several movements', () => {
    expect(reasonWords(change(4, 'One.'))).toBe('These four change for the same reason:');
    expect(reasonWords(change(2, 'One.', 'Two.'))).toBe('These two change for the same reasons:');
    expect(reasonWords(change(9, 'One.'))).toBe('These 9 change for the same reason:');
    expect(reasonWords(change(1, 'One.'))).toBe('Because:');
  });

  it('is summed up in a line', () => {
    expect(shareWords({ asTaught: 38, minutes: 50, changed: 3 })).toBe(
      '38 of 50 minutes as taught · 3 movements change',
    );
    expect(shareWords({ asTaught: 48, minutes: 50, changed: 1 })).toContain('1 movement changes');
  });

  it('leaves to the class as a whole what no movement has said', () => {
    const reasons = [{ text: 'One.' }, { text: 'Talk while you move.' }];
    expect(besides({ fit: { reasons } } as Choice, [change(1, 'One.')])).toEqual([reasons[1]]);
  });
});
