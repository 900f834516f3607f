import { describe, expect, it } from 'vitest';
import { clocksDiffer, momentAt, zoneName } from './zone';

const noonInLisbon = '2027-03-03T12:00:00Z';

describe('A session’s zone', () => {
  it('is named to a reader whose clock shows another time', () => {
    expect(clocksDiffer(noonInLisbon, 'Europe/Lisbon', 'Europe/Madrid')).toBe(true);
  });

  it('is not named to a reader in another zone whose clock shows the same', () => {
    expect(clocksDiffer(noonInLisbon, 'Europe/Lisbon', 'Europe/London')).toBe(false);
  });

  it('is judged on the session’s own day', () => {
    // Azores and Cape Verde: both one hour behind UTC in winter, an hour apart in summer.
    expect(clocksDiffer('2027-01-10T12:00:00Z', 'Atlantic/Azores', 'Atlantic/Cape_Verde')).toBe(
      false,
    );
    expect(clocksDiffer('2027-07-10T12:00:00Z', 'Atlantic/Azores', 'Atlantic/Cape_Verde')).toBe(
      true,
    );
  });

  it('is named by its city', () => {
    expect(zoneName('Europe/Lisbon')).toBe('Lisbon time');
    expect(zoneName('America/New_York')).toBe('New York time');
  });

  it('tells a moment as its own clock showed it', () => {
    expect(momentAt(noonInLisbon, 'Europe/Lisbon')).toContain('12:00');
    expect(momentAt(noonInLisbon, 'Pacific/Auckland')).toBe('4 Mar 2027, 01:00');
  });
});
