import { describe, expect, it } from 'vitest';
import { begin, clockWords, elapsed, goTo } from './clock';

const minute = 60_000;

describe('The quiet clock', () => {
  it('counts from when a movement was come to', () => {
    expect(elapsed(begin(1, 0), 3 * minute)).toBe(3 * minute);
  });

  it('begins anew at the next and goes on where it was left at an earlier one', () => {
    const next = goTo(begin(1, 0), 2, 3 * minute);
    expect(elapsed(next, 3 * minute)).toBe(0);
    expect(elapsed(goTo(next, 1, 5 * minute), 6 * minute)).toBe(4 * minute);
  });

  it('counts on when the same movement is chosen again', () => {
    const spent = begin(1, 0);
    expect(goTo(spent, 1, minute)).toBe(spent);
  });

  it('counts no time when the device’s clock was set back', () => {
    expect(elapsed(begin(1, 5 * minute), 0)).toBe(0);
  });

  it.each([
    [0, '0 of 5 min'],
    [4.99, '4 of 5 min'],
    [5, '5 min are over'],
    [7, '7 min, planned 5'],
  ])('after %d minutes of five says “%s”', (minutes, words) => {
    expect(clockWords(minutes * minute, 5)).toBe(words);
  });
});
