import { describe, expect, it } from 'vitest';
import { rowsOf, scaleOf } from './scale';

// Arithmetic only: 280 days from the first day of week 0 to the due date.
const awaited = { start: '2026-09-18', end: '2027-12-24', dueDate: '2027-06-25' };

describe('A tape while the birth is awaited', () => {
  const scale = scaleOf(awaited, 1000);

  it('begins at week 0, 280 days before the due date', () => {
    expect(scale.at('2026-09-18')).toBe(0);
  });

  it('turns at 42w 0d, fourteen days after the due date', () => {
    expect(scale.turn).toBe(840);
    expect(scale.at('2027-07-09')).toBe(840);
  });

  it('divides the weeks before the turn evenly', () => {
    expect(scale.at('2026-09-25')).toBeCloseTo(840 / 42);
    expect(scale.at('2027-06-25')).toBeCloseTo((840 / 42) * 40);
  });

  it('keeps days off the tape at its ends', () => {
    expect(scale.at('2026-01-01')).toBe(0);
    expect(scale.at('2030-01-01')).toBe(1000);
  });

  it('has a tick for every week from 0 to 42 before the turn', () => {
    const before = scale.ticks.filter(({ x }) => x <= 840.001).map(({ week }) => week);
    expect(before.slice(0, 43)).toEqual(Array.from({ length: 43 }, (_, week) => week));
  });

  it('leaves a number room before the seam', () => {
    const numbered = scale.ticks.filter((tick) => tick.numbered && tick.x < 840);
    expect(Math.max(...numbered.map(({ x }) => x))).toBeLessThan(840 - 18);
  });
});

describe('A tape after the birth', () => {
  it('turns on the day of the birth, and counts weeks from it', () => {
    const scale = scaleOf({ ...awaited, bornOn: '2027-06-11' }, 1000);
    expect(scale.at('2027-06-11')).toBe(scale.turn);
    const there = scale.ticks.filter(({ x }) => x === scale.turn);
    expect(there.map(({ week }) => week)).toEqual([38, 0]);
  });

  it('has one part only when no due date was ever known', () => {
    const scale = scaleOf({ start: '2027-06-11', end: '2027-12-11', bornOn: '2027-06-11' }, 500);
    expect(scale.turn).toBeNull();
    expect(scale.at('2027-06-11')).toBe(0);
    expect(scale.at('2027-12-11')).toBe(500);
  });
});

describe('Numbers on a tape', () => {
  it('stand further apart the narrower the tape is', () => {
    const step = (width: number) => {
      const [first, second] = scaleOf(awaited, width).ticks.filter(({ numbered }) => numbered);
      return (second?.week ?? 0) - (first?.week ?? 0);
    };
    expect(step(320)).toBeGreaterThan(step(1200));
  });
});

describe('Marks beside each other', () => {
  const mark = (x: number) => ({ x, width: 10 });

  it('share a row while they do not touch', () => {
    expect(rowsOf([mark(5), mark(15), mark(25)])).toEqual([0, 0, 0]);
  });

  it('go one row further out where they would', () => {
    expect(rowsOf([mark(5), mark(9), mark(12), mark(16)])).toEqual([0, 1, 2, 0]);
  });

  it('keep their own order, whatever order they lie in', () => {
    expect(rowsOf([mark(9), mark(5)])).toEqual([1, 0]);
  });
});
