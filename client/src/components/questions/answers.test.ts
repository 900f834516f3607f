import { describe, expect, it } from 'vitest';
import type { AskedQuestion } from '@/api/types';
import {
  answered,
  areAgreed,
  carriedOver,
  noneOfTheRest,
  openIn,
  questionOf,
  stepsOf,
  stepToGoOn,
} from './answers';

const question = (
  code: string,
  section: AskedQuestion['section'],
  kind: AskedQuestion['kind'] = 'yesNo',
): AskedQuestion => ({
  code,
  section,
  kind,
  asks: `${code}?`,
  help: '',
  source: { cite: 'common practice, no published source', fromMemory: false },
});

const asked = [
  question('agreement', 'agreement', 'agree'),
  question('sign-a', 'signs'),
  question('sign-b', 'signs'),
  question('health-a', 'health'),
  question('words', 'health', 'text'),
];
const steps = stepsOf(asked);

describe('The steps', () => {
  it('are the sections, in their order', () => {
    expect(steps.map(({ section }) => section)).toEqual(['agreement', 'signs', 'health']);
  });

  it('begin where the first open question is', () => {
    expect(stepToGoOn(steps, {})).toBe(0);
    expect(stepToGoOn(steps, { agreement: { value: 'agreed' }, 'sign-a': { value: 'no' } })).toBe(
      1,
    );
  });

  it('end at the last when nothing is open; own words may be left out', () => {
    const all = {
      agreement: { value: 'agreed' },
      'sign-a': { value: 'no' },
      'sign-b': { value: 'no' },
      'health-a': { value: 'unsure' },
    };
    expect(openIn(asked, all)).toEqual([]);
    expect(stepToGoOn(steps, all)).toBe(2);
  });
});

describe('None of these', () => {
  it('answers no to what is open in its own section only', () => {
    expect(noneOfTheRest(steps[1]?.questions ?? [], {})).toEqual({
      'sign-a': { value: 'no' },
      'sign-b': { value: 'no' },
    });
  });

  it('changes nothing that was answered', () => {
    const before = {
      'sign-a': { value: 'yes', since: '2027-03-01' },
      'sign-b': { value: 'unsure' },
    };
    expect(noneOfTheRest(steps[1]?.questions ?? [], before)).toEqual(before);
  });

  it('never agrees, and never writes words', () => {
    expect(noneOfTheRest(asked, {})).not.toHaveProperty('agreement');
    expect(noneOfTheRest(asked, {})).not.toHaveProperty('words');
  });
});

describe('An answer', () => {
  it('that is taken back leaves the question open, not no', () => {
    const after = answered({ 'sign-a': { value: 'yes' } }, 'sign-a', undefined);
    expect(after).toEqual({});
    expect(openIn(asked, after).map(({ code }) => code)).toContain('sign-a');
  });

  it('is kept over a change of the questions only where the words are the same', () => {
    const now = [
      question('sign-a', 'signs'),
      { ...question('sign-b', 'signs'), asks: 'Something else?' },
    ];
    expect(
      carriedOver({ 'sign-a': { value: 'yes' }, 'sign-b': { value: 'no' } }, asked, now),
    ).toEqual({ 'sign-a': { value: 'yes' } });
  });

  it('is kept nowhere before she agrees', () => {
    expect(areAgreed(asked, { 'sign-a': { value: 'no' } })).toBe(false);
    expect(areAgreed(asked, { agreement: { value: 'agreed' } })).toBe(true);
  });
});

describe('A refusal', () => {
  it('leads to the question it is about', () => {
    expect(questionOf({ 'answers.sign-a': 'Still open.' })).toBe('sign-a');
    expect(questionOf({ version: 'The questions have changed.' })).toBeUndefined();
  });
});
