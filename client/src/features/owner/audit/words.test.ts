import { describe, expect, it } from 'vitest';
import { asWhat, checkWords, partOf } from './words';

describe('The audit in words', () => {
  it('names the part and as what it was looked at', () => {
    expect(partOf({ kind: 'letter file' })).toBe('the file of a letter');
    expect(asWhat({ seenAs: 'frontDesk' })).toBe('front desk');
  });

  it('hides nothing it has no words for', () => {
    expect(partOf({ kind: 'feed' })).toBe('feed');
    expect(asWhat({ seenAs: 'visitor' })).toBe('visitor');
  });

  it('says that the trail is whole, and how long', () => {
    expect(checkWords({ entries: 12, whole: true, firstBroken: null })).toContain('its 12 entries');
  });

  it('says where it is broken and what to do', () => {
    const words = checkWords({ entries: 12, whole: false, firstBroken: 7 });
    expect(words).toContain('entry 7 of 12');
    expect(words).toContain('Keep a copy');
  });
});
