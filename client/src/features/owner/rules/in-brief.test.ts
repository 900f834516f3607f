import { expect, it } from 'vitest';
import { becomes, inBrief } from './in-brief';

const none = { judged: 0, stricter: 0, milder: 0, movementsOnly: 0, bookings: [] };

it('says so when nothing changes', () => {
  expect(inBrief({ ...none, judged: 12 })).toBe('12 bookings ahead looked at: none changes.');
});

it('counts what gets stricter, milder or other', () => {
  expect(inBrief({ ...none, judged: 1, stricter: 1 })).toBe(
    '1 booking ahead looked at: 1 more strictly judged.',
  );
  expect(inBrief({ ...none, judged: 9, stricter: 2, milder: 3, movementsOnly: 4 })).toBe(
    '9 bookings ahead looked at: 2 more strictly judged, 3 less strictly, 4 with other movements only.',
  );
});

it('says what becomes of a movement, by its words where the verdict stays', () => {
  const curl = { name: 'Curl-up', before: 'Dead bug instead', after: 'Leg slides instead' };
  expect(becomes({ ...curl, from: 'replaced', to: 'replaced' })).toBe(
    'Curl-up: “Dead bug instead” becomes “Leg slides instead”',
  );
  expect(becomes({ ...curl, from: 'replaced', to: 'asTaught', after: '' })).toBe(
    'Curl-up: instead becomes as taught',
  );
});
