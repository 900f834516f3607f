import { describe, expect, it } from 'vitest';
import type { HerMovement, MovementVerdict, Person, Planned } from '@/api/types';
import {
  allDifferently,
  differently,
  howMany,
  howManyWords,
  rowOf,
  sameThroughout,
  stepTo,
  throughoutOf,
  throughTheClass,
} from './who-does-what';

const does = (position: number, verdict: MovementVerdict, instruction = ''): HerMovement => ({
  position,
  name: `movement ${position}`,
  verdict,
  instruction,
  reasons: [],
});

const one = { movements: [does(2, 'adapted', 'knee down'), does(1, 'leftOut', 'rest')] };
const two = { movements: [does(1, 'asTaught'), does(2, 'adapted', 'knee down')] };
const three = { movements: [does(1, 'asTaught'), does(2, 'replaced', 'leg slides instead')] };

const plan = [1, 2, 3].map((position) => ({ position }) as Planned);

describe('Who does something else', () => {
  it('is found by the place in the plan', () => {
    expect(differently(one, 2)?.instruction).toBe('knee down');
    expect(differently(two, 1)).toBeUndefined();
    expect(differently(one, null)).toBeUndefined();
  });

  it('is told for one person in the order of the plan', () => {
    expect(allDifferently(one).map(({ instruction }) => instruction)).toEqual([
      'rest',
      'knee down',
    ]);
    expect(allDifferently({ movements: [] })).toEqual([]);
  });

  it('is told once where it is the same from beginning to end', () => {
    const rests = { movements: [does(1, 'leftOut', 'rest'), does(2, 'leftOut', 'rest')] };
    expect(sameThroughout(rests)?.instruction).toBe('rest');
    expect(sameThroughout(one)).toBeUndefined();
    expect(sameThroughout({ movements: [] })).toBeUndefined();
  });

  it.each([
    [1, 1, '1 does something else'],
    [2, 3, '3 do something else'],
    [3, 0, 'everybody as taught'],
  ])('at place %i are %i', (position, count, words) => {
    expect(howMany([one, two, three], position)).toBe(count);
    expect(howManyWords(count)).toBe(words);
  });
});

describe('Moving on through the plan', () => {
  it.each([
    [null, 1, 1],
    [1, 1, 2],
    [3, 1, 3],
    [1, -1, null],
    [null, -1, null],
    [3, -1, 2],
  ] as const)('from %s by %i leads to %s', (from, step, to) => {
    expect(stepTo(plan, from, step)).toBe(to);
  });

  it('leads nowhere without a plan', () => {
    expect(stepTo([], null, 1)).toBeNull();
  });
});

describe('A row of the printed sheet', () => {
  it('lets neighbours who do the same share a cell', () => {
    expect(rowOf([one, two, three], 2)).toEqual([
      { instruction: 'knee down', verdict: 'adapted', span: 2 },
      { instruction: 'leg slides instead', verdict: 'replaced', span: 1 },
    ]);
  });

  it('keeps a cell of their own for those who do it as taught', () => {
    expect(rowOf([two, three], 1)).toEqual([
      { instruction: '', span: 1 },
      { instruction: '', span: 1 },
    ]);
  });
});

describe('What holds through the whole class', () => {
  const her = {
    movements: [{ name: 'Front plank' }, { name: 'Side plank' }] as Person['movements'],
    instructions: [
      'By her letter: heart rate at most 138 a minute.',
      'Front plank, Side plank: short spells, rest between.',
      'Side plank: lower knee down.',
      'Front planks are for others.',
    ].map((text) => ({ text, source: null })),
  };

  it('is all that no movement of hers is named for', () => {
    expect(throughTheClass(her).map(({ text }) => text)).toEqual([
      'By her letter: heart rate at most 138 a minute.',
      'Front planks are for others.',
    ]);
  });
});

describe('What holds all through the class', () => {
  const her = (called: string, ...texts: string[]) => ({
    called,
    movements: [],
    instructions: texts.map((text) => ({ text, source: null })),
  });

  it('is told once with everybody it holds for, and loses nobody’s', () => {
    const people = [
      her('Ana', 'By her letter: rests when she asks to.', 'Water within reach.'),
      her('Bea', 'Water within reach.'),
      her('Cleo'),
    ];
    expect(
      throughoutOf(people).map(({ text, people: them }) => [text, them.map((p) => p.called)]),
    ).toEqual([
      ['By her letter: rests when she asks to.', ['Ana']],
      ['Water within reach.', ['Ana', 'Bea']],
    ]);
  });
});
