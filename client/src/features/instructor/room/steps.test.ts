import { describe, expect, it } from 'vitest';
import { minutesBefore, stepFrom, stepOfKey, stopAt, stopsOf } from './steps';

const plan = [
  { position: 1, minutes: 4 },
  { position: 2, minutes: 2 },
  { position: 3, minutes: 5 },
];
const stops = stopsOf(plan);

describe('Class mode', () => {
  it('goes through the plan and ends with the notes', () => {
    expect(stops).toEqual([1, 2, 3, 'notes']);
  });

  it('has one page before the notes in a class without a plan', () => {
    expect(stopsOf([])).toEqual([1, 'notes']);
  });

  it.each([
    [undefined, 1],
    [2, 2],
    ['notes', 'notes'],
    [9, 1],
  ] as const)('asked for %s stands at %s', (asked, at) => {
    expect(stopAt(stops, asked)).toBe(at);
  });

  it.each([
    [1, 1, 2],
    [3, 1, 'notes'],
    ['notes', 1, 'notes'],
    ['notes', -1, 3],
    [1, -1, 1],
  ] as const)('from %s by %i leads to %s', (from, by, to) => {
    expect(stepFrom(stops, from, by)).toBe(to);
  });

  it.each([
    [' ', 1],
    ['ArrowRight', 1],
    ['PageDown', 1],
    ['ArrowLeft', -1],
    ['PageUp', -1],
    ['ArrowUp', null],
    ['a', null],
  ] as const)('takes the key “%s” as %s', (key, step) => {
    expect(stepOfKey(key)).toBe(step);
  });

  it.each([
    [1, 0],
    [3, 6],
    ['notes', 11],
  ] as const)('has planned the minutes before %s to be %i', (at, minutes) => {
    expect(minutesBefore(plan, at)).toBe(minutes);
  });
});
