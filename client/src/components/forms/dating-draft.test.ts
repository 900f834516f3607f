import { describe, expect, it } from 'vitest';
import { emptyDraft, evidenceOf } from './dating-draft';

const nothing = { lastPeriod: null, cycleDays: null, scan: null, transfer: null, stated: null };

describe('What a half-filled dating form gives', () => {
  it('is nothing while it is empty', () => {
    expect(evidenceOf(emptyDraft)).toEqual(nothing);
  });

  it('is no scan until its weeks are known; missing days are none', () => {
    const scanned = { ...emptyDraft, scanDate: '2027-01-04' };
    expect(evidenceOf(scanned)).toEqual(nothing);
    expect(evidenceOf({ ...scanned, scanWeeks: 9 }).scan).toEqual({
      date: '2027-01-04',
      weeks: 9,
      days: 0,
    });
  });

  it('is no cycle without a period', () => {
    expect(evidenceOf({ ...emptyDraft, cycleDays: 30 })).toEqual(nothing);
  });

  it('takes the embryo’s age with the transfer', () => {
    expect(evidenceOf({ ...emptyDraft, transferDate: '2027-01-04' }).transfer).toEqual({
      date: '2027-01-04',
      embryoDays: 5,
    });
  });
});
