import { describe, expect, it } from 'vitest';
import type { SessionSummary } from '@/api/types';
import { nextOf } from './next';

const session = (id: number, on: string, starts: string, ends: string, status = 'open') =>
  ({
    id,
    on,
    startsAt: `${on}T${starts}:00Z`,
    endsAt: `${on}T${ends}:00Z`,
    status,
  }) as SessionSummary;

const morning = session(1, '2027-03-03', '09:00', '10:00');
const evening = session(2, '2027-03-03', '18:00', '19:00');
const tomorrow = session(3, '2027-03-04', '09:00', '10:00');

describe('Her next session', () => {
  it('is the one going on now', () => {
    const { next } = nextOf([evening, morning], '2027-03-03', new Date('2027-03-03T09:30:00Z'));
    expect(next?.id).toBe(1);
  });

  it('is the following one once it has ended', () => {
    const { next, later } = nextOf(
      [tomorrow, morning, evening],
      '2027-03-03',
      new Date('2027-03-03T10:00:00Z'),
    );
    expect(next?.id).toBe(2);
    expect(later.map(({ id }) => id)).toEqual([3]);
  });

  it('is never a cancelled one', () => {
    const off = session(4, '2027-03-03', '08:00', '18:00', 'cancelled');
    const { next } = nextOf([off, evening], '2027-03-03', new Date('2027-03-03T09:00:00Z'));
    expect(next?.id).toBe(2);
  });

  it('is the first of the studio’s day where the reader’s clock is on another', () => {
    const { next } = nextOf([evening, morning], '2027-03-03', new Date('2026-11-25T20:00:00Z'));
    expect(next?.id).toBe(1);
  });
});
