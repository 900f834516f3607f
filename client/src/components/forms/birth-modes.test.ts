import { expect, test } from 'vitest';
import { broughtBackWords, releasedWords } from './birth-modes';

test('says what was released, and cheers nobody', () => {
  expect(releasedWords({ bookingsReleased: 0 })).toBe('Noted.');
  expect(releasedWords({ bookingsReleased: 1 })).toBe(
    'Noted. 1 booking released; nothing is owed.',
  );
  expect(releasedWords({ bookingsReleased: 3 })).toBe(
    'Noted. 3 bookings released; nothing is owed.',
  );
});

test('says what came back and what did not', () => {
  expect(broughtBackWords({ booked: 0, waiting: 0, gone: 0 })).toBe('Taken back.');
  expect(broughtBackWords({ booked: 2, waiting: 1, gone: 1 })).toBe(
    'Taken back: 2 bookings back in place, 1 on a waitlist now, 1 could not be had back.',
  );
});
