import { describe, expect, it } from 'vitest';
import type { Letter, LetterTerms } from '@/api/types';
import { emptyReview, missingIn, reviewOf } from './review-draft';
import { keptAs, nextAfter, termLines } from './words';

const read = {
  ...emptyReview,
  issuedBy: '  Dr Wenna Ashdown ',
  issuedOn: '2027-02-20',
  expiresOn: '2027-06-01',
};

describe('What is read off a letter', () => {
  it('is sent with nothing where nothing was typed', () => {
    expect(reviewOf(read)).toEqual({
      issuedBy: 'Dr Wenna Ashdown',
      issuedOn: '2027-02-20',
      expiresOn: '2027-06-01',
      leaveOut: [],
      effortMost: null,
      heartRateMost: null,
      words: null,
      replacesEarlier: false,
    });
  });

  it('keeps an effort of none at all: 0 is a ceiling too', () => {
    expect(
      reviewOf({ ...read, effortMost: 0, heartRateMost: 138, words: ' Slowly. ' }),
    ).toMatchObject({ effortMost: 0, heartRateMost: 138, words: 'Slowly.' });
  });

  it.each(['issuedOn', 'expiresOn'] as const)('is not sent without %s, and says so', (field) => {
    const draft = { ...read, [field]: null };
    expect(reviewOf(draft)).toBeNull();
    expect(missingIn(draft)[field]).not.toBeNull();
  });

  it('wants to know who wrote it', () => {
    expect(missingIn({ ...read, issuedBy: '  ' }).issuedBy).not.toBeNull();
    expect(Object.values(missingIn(read))).toEqual([null, null, null]);
  });
});

describe('What a letter asks for', () => {
  const none: LetterTerms = {
    leaveOut: [],
    leaveOutWords: [],
    effortMost: null,
    heartRateMost: null,
    words: null,
    replacesEarlier: false,
  };

  it('is nothing when it asks for nothing', () => {
    expect(termLines(none)).toEqual([]);
  });

  it('is said a line each, with units', () => {
    expect(
      termLines({
        ...none,
        leaveOut: ['supine', 'impact'],
        leaveOutWords: ['flat on the back', 'impact'],
        effortMost: 0,
        heartRateMost: 138,
        words: 'Rests when she asks to.',
        replacesEarlier: true,
      }),
    ).toEqual([
      'Leave out: flat on the back, impact',
      'Effort of at most 0 of 10',
      'Heart rate of at most 138 beats a minute',
      'For the instructor: Rests when she asks to.',
      'Takes the place of what earlier letters asked for',
    ]);
  });
});

describe('A letter handed in', () => {
  it.each([
    ['application/pdf', false, 'PDF'],
    ['image/jpeg', false, 'picture'],
    [null, true, 'on paper at the studio'],
    [null, false, 'file'],
  ])('as %s, paper %s, is called %s', (mediaType, onPaper, words) => {
    expect(keptAs({ mediaType, onPaper } as Letter)).toBe(words);
  });
});

describe('After one letter', () => {
  const waiting = [{ id: 3 }, { id: 5 }, { id: 8 }];

  it.each([
    [3, 5, 'the one after it'],
    [8, 3, 'the first, after the last'],
  ])('comes, after %i, %i: %s', (done, next) => {
    expect(nextAfter(waiting, done)?.id).toBe(next);
  });

  it('comes nothing when it was the only one', () => {
    expect(nextAfter([{ id: 3 }], 3)).toBeUndefined();
  });
});
