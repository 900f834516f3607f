import { describe, expect, it } from 'vitest';
import { arrivalOf } from './arrival';

describe('Whether she is here', () => {
  it('is told apart from whether she was asked', () => {
    expect(arrivalOf({ checkedInAt: null, wellAt: null })).toBe('away');
    expect(arrivalOf({ checkedInAt: '2027-03-03T09:00:00Z', wellAt: null })).toBe('unasked');
    expect(arrivalOf({ checkedInAt: '2027-03-03T09:00:00Z', wellAt: '2027-03-03T09:00:00Z' })).toBe(
      'well',
    );
  });
});
