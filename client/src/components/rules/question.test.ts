import { describe, expect, it } from 'vitest';
import type { HerMovement } from '@/api/types';
import { asksMore, compared, joined, nothingKnown, questionIn, questionOf } from './question';

const today = '2027-03-03';

describe('a question in the address', () => {
  it('is read, and nonsense is dropped', () => {
    expect(
      questionIn({ stage: 'postnatal', on: '2027-03-10', birth: 'caesarean', effort: 5, class: 2 }),
    ).toMatchObject({
      stage: 'postnatal',
      on: '2027-03-10',
      birth: 'caesarean',
      effort: 5,
      class: 2,
    });
    const wrong = questionIn({ due: 'soon', birth: 'quick', effort: 11, class: 1.5 });
    expect(wrong).toMatchObject({ due: undefined, birth: undefined });
    expect(wrong.effort).toBeUndefined();
    expect(wrong.class).toBeUndefined();
  });

  it('asks nothing before a stage or a due date is chosen', () => {
    expect(questionOf({ factors: 'showing' }, today)).toBeUndefined();
  });

  it('goes by the due date where both are given, and by today where no day is', () => {
    expect(questionOf({ stage: 'postnatal', due: '2027-06-01' }, today)).toMatchObject({
      stage: null,
      dueDate: '2027-06-01',
      on: today,
    });
  });

  it('carries several codes and none', () => {
    expect(questionOf({ stage: 'postnatal', factors: 'a,b' }, today)?.factors).toEqual(['a', 'b']);
    expect(joined([])).toBeUndefined();
    expect(joined(['a', 'b'])).toBe('a,b');
  });
});

describe('against nothing known', () => {
  const question = questionOf(
    { stage: 'second-trimester', factors: 'separation-now', effort: 4, class: 3 },
    today,
  );
  const movement = (position: number, over: Partial<HerMovement> = {}): HerMovement => ({
    position,
    name: `Movement ${position}`,
    verdict: 'asTaught',
    option: null,
    instruction: '',
    reasons: [],
    ...over,
  });

  it('keeps day, stage and class, and leaves out the rest', () => {
    expect(question).toBeDefined();
    if (question === undefined) return;
    expect(asksMore(question)).toBe(true);
    const plain = nothingKnown(question);
    expect(asksMore(plain)).toBe(false);
    expect(plain).toMatchObject({ stage: 'second-trimester', on: today, planId: 3 });
  });

  it('shows what is another verdict or another instruction, and nothing else', () => {
    const [same, other, reworded] = compared(
      [
        movement(1),
        movement(2, { verdict: 'leftOut', instruction: 'rest' }),
        movement(3, { verdict: 'adapted', instruction: 'knee down' }),
      ],
      [movement(1), movement(2), movement(3, { verdict: 'adapted', instruction: 'slower' })],
    );
    expect(same?.otherwise).toBeUndefined();
    expect(other?.otherwise?.verdict).toBe('asTaught');
    expect(reworded?.otherwise?.instruction).toBe('slower');
  });
});
