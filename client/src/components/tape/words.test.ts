import { describe, expect, it } from 'vitest';
import { fitted, tapeWords, widthOf } from './words';

describe('A stage’s label on the tape', () => {
  it('is its whole name where there is room', () => {
    expect(fitted('Second trimester', widthOf('Second trimester') + 12)).toBe('Second trimester');
  });

  it('is its first word where there is less', () => {
    expect(fitted('Second trimester', widthOf('Second') + 12)).toBe('Second');
  });

  it('is left out rather than cut', () => {
    expect(fitted('Second trimester', 20)).toBe('');
  });
});

describe('A tape in words', () => {
  const tape = {
    start: '2026-09-18',
    end: '2027-12-24',
    today: '2027-03-03',
    dueDate: '2027-06-25',
    bornOn: null,
    bands: [{ stage: 'third-trimester', name: 'Third trimester', from: '2027-04-02', to: null }],
    letters: [{ from: '2027-01-04', to: '2027-03-20' }],
    bookings: [
      {
        bookingId: 1,
        sessionId: 2,
        on: '2027-03-05',
        className: 'Steady strength',
        verdict: 'withModifications' as const,
        status: 'booked' as const,
      },
    ],
  };

  it('says everything the drawing shows', () => {
    const said = tapeWords(tape, {
      age: '23w 5d',
      nextStage: { name: 'Third trimester', on: '2027-04-02' },
    });
    expect(said).toEqual([
      'Today is 3 March 2027, 23w 5d.',
      'Due on 25 June 2027.',
      'Third trimester: from 2 April 2027 on.',
      'Next: Third trimester from 2 April 2027.',
      'Clearance letter from 4 January 2027 to 20 March 2027.',
      'Fri 5 Mar: Steady strength, booked, suits with changes.',
    ]);
  });
});
