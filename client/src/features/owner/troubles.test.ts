import { describe, expect, it } from 'vitest';
import type { SessionSummary } from '@/api/types';
import { troublesOf } from './troubles';

const session = (id: number, more: Partial<SessionSummary> = {}) =>
  ({
    id,
    startsAt: '2027-03-03T09:00:00Z',
    endsAt: '2027-03-03T10:00:00Z',
    roomId: id,
    instructorId: id,
    instructorQualified: true,
    status: 'open',
    ...more,
  }) as SessionSummary;

describe('A session needs the owner', () => {
  it('when nobody teaches it', () => {
    expect(troublesOf([session(1, { instructorId: null })]).get(1)).toEqual(['No instructor']);
  });

  it('when its instructor’s qualification is not valid that day', () => {
    expect(troublesOf([session(1, { instructorQualified: false })]).get(1)).toEqual([
      'Qualification not valid that day',
    ]);
  });

  it('when two share a room or an instructor at one time: both do', () => {
    const troubles = troublesOf([session(1), session(2, { roomId: 1, instructorId: 1 })]);
    expect(troubles.get(1)).toEqual(['Room taken twice', 'Instructor is elsewhere then']);
    expect(troubles.get(2)).toEqual(['Room taken twice', 'Instructor is elsewhere then']);
  });

  it('not when one begins as the other ends', () => {
    const after = { roomId: 1, startsAt: '2027-03-03T10:00:00Z', endsAt: '2027-03-03T11:00:00Z' };
    expect(troublesOf([session(1), session(2, after)]).size).toBe(0);
  });

  it('not when it was cancelled', () => {
    expect(troublesOf([session(1, { instructorId: null, status: 'cancelled' })]).size).toBe(0);
  });
});
