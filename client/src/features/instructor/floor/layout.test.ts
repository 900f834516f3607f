import { describe, expect, it } from 'vitest';
import { columnsFor, layOut, stepFrom } from './layout';

describe('Mats on the floor', () => {
  it('fill the row nearest the instructor first', () => {
    expect(layOut(5, 5, 3)).toEqual([
      [0, 1, 2],
      [3, 4],
    ]);
  });

  it('show free mats where the last row has room, never more than there are seats', () => {
    expect(layOut(4, 5, 3)).toEqual([
      [0, 1, 2],
      [3, null],
    ]);
  });

  it('are none when nobody is booked', () => {
    expect(layOut(0, 12, 4)).toEqual([]);
  });
});

describe('Columns', () => {
  it.each([
    [328, 12, 2, 'a phone'],
    [700, 12, 4, 'a tablet'],
    [1600, 12, 5, 'a wall: no more than can be read from two metres'],
    [1600, 3, 3, 'few people'],
    [328, 1, 2, 'one person'],
  ])('%i px and %i people make %i: %s', (width, people, columns) => {
    expect(columnsFor(width, people)).toBe(columns);
  });
});

describe('Arrow keys between mats', () => {
  // Three columns, eight people: rows 0–2, 3–5, 6–7.
  it.each([
    [0, 'ArrowRight', 1],
    [2, 'ArrowRight', 2],
    [3, 'ArrowLeft', 3],
    [1, 'ArrowUp', 4],
    [4, 'ArrowDown', 1],
    [1, 'ArrowDown', 1],
    [5, 'ArrowUp', 5],
    [4, 'Home', 3],
    [3, 'End', 5],
    [6, 'End', 7],
    [4, 'x', 4],
  ])('from mat %i, %s leads to %i', (mat, key, to) => {
    expect(stepFrom(mat, key, 8, 3)).toBe(to);
  });
});
