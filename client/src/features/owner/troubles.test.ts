import { describe, expect, it } from 'vitest';
import type { SessionSummary, TimetableConflict } from '@/api/types';
import { troublesOf } from './troubles';

const session = (id: number, more: Partial<SessionSummary> = {}) =>
  ({ id, instructorId: id, status: 'open', ...more }) as SessionSummary;

const conflict = (kind: TimetableConflict['kind'], keys: number[], isHard = true) =>
  ({ kind, keys, isHard, isNew: false, words: kind }) as TimetableConflict;

describe('A session needs the owner', () => {
  it('when nobody teaches it', () => {
    expect(troublesOf([session(1, { instructorId: null })], []).get(1)).toEqual(['No instructor']);
  });

  it('when something stands against it that cannot be: each kind once, both sessions', () => {
    const troubles = troublesOf(
      [session(1), session(2)],
      [
        conflict('roomTaken', [1, 2]),
        conflict('roomTaken', [1, 3]),
        conflict('instructorTaken', [1, 2]),
      ],
    );
    expect(troubles.get(1)).toEqual(['Room taken', 'Teaches elsewhere']);
    expect(troubles.get(2)).toEqual(['Room taken', 'Teaches elsewhere']);
  });

  it('not when it is something that the owner may accept', () => {
    expect(troublesOf([session(1)], [conflict('outsideHours', [1], false)]).size).toBe(0);
  });

  it('not when it was cancelled', () => {
    expect(troublesOf([session(1, { instructorId: null, status: 'cancelled' })], []).size).toBe(0);
  });
});
