import { describe, expect, it } from 'vitest';
import type { Choice } from '@/api/types';
import { byDay, open, refused } from './choices';

interface Given {
  id: number;
  on?: string;
  canBook?: Choice['canBook'];
  bookingId?: number;
  verdict?: Choice['fit']['verdict'];
  why?: string;
  message?: string;
}

const choice = ({ id, on = '2027-03-04', canBook = 'seat', ...more }: Given) =>
  ({
    session: { id, on, classId: 7, className: 'Steady strength' },
    canBook,
    bookingId: more.bookingId ?? null,
    refusal: more.message === undefined ? null : { code: 'overlap', message: more.message },
    fit: {
      verdict: more.verdict ?? 'suitable',
      summary: 'As taught.',
      reasons:
        more.why === undefined
          ? []
          : [{ code: 'stage', verdict: more.verdict, text: more.why, source: null, lift: null }],
    },
  }) as unknown as Choice;

describe('What she may have', () => {
  it('keeps the order of fit, and leaves out what is refused or hers already', () => {
    const list = [
      choice({ id: 3 }),
      choice({ id: 1, canBook: 'waitlist' }),
      choice({ id: 2, canBook: 'no' }),
      choice({ id: 4, bookingId: 9 }),
    ];
    expect(open(list).map(({ session }) => session.id)).toEqual([3, 1]);
  });

  it('is put under its days, days in order', () => {
    const days = byDay([choice({ id: 1, on: '2027-03-09' }), choice({ id: 2 })]);
    expect(days.map(([day]) => day)).toEqual(['2027-03-04', '2027-03-09']);
  });
});

describe('What she may not have', () => {
  it('is told once for sessions of one class with the same reason', () => {
    const unfit = { canBook: 'no', verdict: 'notSuitable', why: 'Not her stage.' } as const;
    const groups = refused([choice({ id: 1, ...unfit }), choice({ id: 2, ...unfit })]);
    expect(groups).toHaveLength(1);
    expect(groups[0]?.sessions.map(({ id }) => id)).toEqual([1, 2]);
  });

  it('is told in the server’s words when the class itself would suit her', () => {
    const [group] = refused([choice({ id: 1, canBook: 'no', message: 'It overlaps another.' })]);
    expect(group).toMatchObject({ message: 'It overlaps another.', reasons: [] });
  });

  it('leaves out what she is booked into', () => {
    expect(refused([choice({ id: 1, canBook: 'no', bookingId: 5 })])).toEqual([]);
  });
});
