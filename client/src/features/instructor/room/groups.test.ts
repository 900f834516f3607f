import { describe, expect, it } from 'vitest';
import type { HerMovement, MovementVerdict, Verdict } from '@/api/types';
import { onlyDifferent } from '@/features/instructor/plan/table-rows';
import { alwaysOf, groupsAt } from './groups';

const does = (verdict: MovementVerdict, instruction = '', position = 1): HerMovement => ({
  position,
  name: 'a movement',
  verdict,
  instruction,
  reasons: [],
});
const person = (called: string, ...movements: HerMovement[]) => ({ called, movements });

const ada = person('Ada', does('adapted', 'knee down'));
const bea = person('Bea', does('asTaught'));
const cleo = person('Cleo', does('leftOut', 'rest'));
const dora = person('Dora', does('adapted', 'knee down'));

describe('At a movement', () => {
  const { groups, asTaught } = groupsAt([ada, bea, cleo, dora], 1);

  it('those who do the same stand together, the furthest from the movement first', () => {
    expect(groups.map((group) => [group.instruction, group.people.map((p) => p.called)])).toEqual([
      ['rest', ['Cleo']],
      ['knee down', ['Ada', 'Dora']],
    ]);
  });

  it('the others are as taught, and nobody is lost', () => {
    expect(asTaught).toEqual([bea]);
  });

  it('the same words under another verdict are another group', () => {
    const other = person('Eve', does('replaced', 'knee down'));
    expect(groupsAt([ada, other], 1).groups).toHaveLength(2);
  });
});

describe('Only what differs', () => {
  it('leaves movements out that everybody does as taught, and people who do everything so', () => {
    const shown = onlyDifferent([{ position: 1 }, { position: 2 }], [ada, bea]);
    expect(shown).toEqual({ plan: [{ position: 1 }], people: [ada] });
  });
});

describe('What stands in the room all through the class', () => {
  const her = (bookingId: number, verdict: Verdict, ...texts: string[]) => ({
    bookingId,
    verdict,
    movements: [],
    instructions: texts.map((text) => ({ text, source: null })),
  });

  it('is one card for each person’s letter, those who take part first', () => {
    const cards = alwaysOf([
      her(1, 'notSuitable', 'On hold: she does not take part.'),
      her(
        2,
        'withModifications',
        'By her letter: rests.',
        'By her letter: effort at most 4 of 10.',
      ),
      her(3, 'suitable'),
    ]);
    expect(cards.map(({ texts, people }) => [people.map((p) => p.bookingId), texts])).toEqual([
      [[2], ['By her letter: rests.', 'By her letter: effort at most 4 of 10.']],
      [[1], ['On hold: she does not take part.']],
    ]);
  });
});
