import { describe, expect, it } from 'vitest';
import type { Movement } from '@/api/types';
import { found } from './catalogue';
import { effortOver, effortWords, timeWords } from './effort';

const movement = (name: string, groupName: string, positionName: string, equipment: string[]) =>
  ({ code: name, name, groupName, positionName, equipment }) as unknown as Movement;

const all = [
  movement('Seated row', 'Upper body', 'Seated', ['band']),
  movement('Squat', 'Lower body', 'Standing', []),
  movement('Seated-cat stretch', 'Stretch', 'Seated', ['chair']),
  movement('Clamshell', 'Side-lying', 'On the side', ['cushion']),
];
const named = (typed: string) => found(all, typed).map(({ name }) => name);

describe('Searching movements', () => {
  it.each([
    ['', 4, 'nothing typed shows all'],
    ['squ', 1, 'the beginning of its name'],
    ['SEATED', 2, 'a position, in any letters'],
    ['seated chair', 1, 'its name and what is needed for it'],
    ['lower', 1, 'its group'],
    ['band', 1, 'what is needed for it'],
    ['cat', 1, 'a word in the middle of its name'],
    ['quat', 0, 'not the middle of a word'],
    ['handstand', 0, 'what there is not'],
  ])('"%s" finds %i: %s', (typed, count) => {
    expect(named(typed)).toHaveLength(count);
  });

  it('puts what is called so before what only belongs to it', () => {
    const side = movement('Side bend', 'Stretch', 'Seated', []);
    expect(found([...all, side], 'side').map(({ name }) => name)).toEqual([
      'Side bend',
      'Clamshell',
    ]);
  });
});

describe('The effort over a class', () => {
  const curve = effortOver([
    { name: 'Marching', minutes: 5, effort: 2 },
    { name: 'Squat', minutes: 10, effort: 5 },
    { name: 'Rest', minutes: 3, effort: 0 },
  ]);

  it('gives each movement its stretch of minutes', () => {
    expect(curve.map(({ from, to }) => [from, to])).toEqual([
      [0, 5],
      [5, 15],
      [15, 18],
    ]);
  });

  it('is told in words', () => {
    expect(effortWords(curve)).toBe(
      'Begins at 2 of 10, is highest at minute 5 with 5 (Squat) and ends at 0 after 18 minutes.',
    );
    expect(effortWords([])).toBe('No movement yet.');
  });
});

describe('The time planned against the time there is', () => {
  it.each([
    [50, 50, 'full', 'fills the class'],
    [49, 50, 'under', '1 minute still free'],
    [0, 50, 'under', '50 minutes still free'],
    [51, 50, 'over', '1 minute too long'],
    [62, 50, 'over', '12 minutes too long'],
  ])('%i of %i is %s', (planned, length, state, words) => {
    expect(timeWords(planned, length)).toEqual({ state, words });
  });
});
