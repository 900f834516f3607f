import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, mondayOf, nearDay, readDay, shortDay, sinceBirth } from './days';

describe('Days', () => {
  it('are counted over a month, a leap day and a year', () => {
    expect(addDays('2027-02-28', 1)).toBe('2027-03-01');
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
  });

  it('are never lost where clocks change: 28 March 2027 has 23 hours in Lisbon', () => {
    expect(daysBetween('2027-03-27', '2027-03-29')).toBe(2);
  });

  it('count backwards too', () => {
    expect(daysBetween('2027-03-03', '2027-02-24')).toBe(-7);
  });

  it.each([
    ['2027-03-01', '2027-03-01', 'a Monday is its own'],
    ['2027-03-03', '2027-03-01', 'a Wednesday'],
    ['2027-03-07', '2027-03-01', 'a Sunday ends its week'],
  ])('%s is in the week of %s: %s', (day, monday) => {
    expect(mondayOf(day)).toBe(monday);
  });

  it('are written with their weekday, and near ones by the word for them', () => {
    expect(shortDay('2027-03-05')).toBe('Fri 5 Mar');
    expect(nearDay('2027-03-03', '2027-03-03')).toBe('today');
    expect(nearDay('2027-03-04', '2027-03-03')).toBe('tomorrow');
    expect(nearDay('2027-03-05', '2027-03-03')).toBe('Fri 5 Mar');
  });
});

describe('Time since the birth', () => {
  it.each([
    [0, '0 days'],
    [1, '1 day'],
    [13, '13 days'],
    [14, '2 weeks'],
    [42, '6 weeks'],
    [44, '6w 2d'],
  ])('of %i days is written %s', (days, words) => {
    expect(sinceBirth(days)).toBe(words);
  });
});

describe('A day as typed', () => {
  it.each([
    ['4/3/2027', '2027-03-04'],
    ['04.03.2027', '2027-03-04'],
    ['4-3-27', '2027-03-04'],
    ['4 mar 2027', '2027-03-04'],
    ['4 March 2027', '2027-03-04'],
    ['10 November 2026', '2026-11-10'],
    ['2027-03-04', '2027-03-04'],
    ['29/2/2028', '2028-02-29'],
  ])('%s is %s, day before month', (typed, day) => {
    expect(readDay(typed)).toBe(day);
  });

  it.each(['', 'soon', '31/2/2027', '29/2/2027', '4/13/2027', '0/3/2027', '4 foo 2027'])(
    '%s is no day',
    (typed) => {
      expect(readDay(typed)).toBeNull();
    },
  );
});
