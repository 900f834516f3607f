import { describe, expect, it } from 'vitest';
import { hoursOf, lasting, pressed, sideBySide, type Ground, type Spot } from './place';

const spot: Spot & { id: number } = {
  id: 1,
  classId: 1,
  roomId: 10,
  instructorId: 20,
  on: '2027-03-09',
  startsLocal: '18:00',
  minutes: 50,
  seats: 8,
  isHeld: true,
};

const ground: Ground = {
  view: 'room',
  first: '2027-03-08',
  last: '2027-03-14',
  lines: [
    { key: 'room-10', id: 10, name: 'Cork room', under: '' },
    { key: 'room-11', id: 11, name: 'Window room', under: '' },
  ],
};

const press = (key: string, shiftKey = false, from: Spot = spot) =>
  pressed(from, { key, shiftKey }, ground);

describe('A session that is held', () => {
  it.each([
    ['ArrowUp', { startsLocal: '17:45' }],
    ['ArrowDown', { startsLocal: '18:15' }],
    ['ArrowLeft', { on: '2027-03-08' }],
    ['ArrowRight', { on: '2027-03-10' }],
    ['PageDown', { roomId: 11 }],
    ['+', { minutes: 55 }],
    ['-', { minutes: 45 }],
  ])('moves by %s', (key, change) => {
    expect(press(key)).toEqual({ ...spot, ...change });
  });

  it('changes its room by shift and an arrow, and stays in the last one', () => {
    expect(press('ArrowDown', true)).toEqual({ ...spot, roomId: 11 });
    expect(press('ArrowUp', true)).toEqual(spot);
  });

  it('goes to another instructor on the board of instructors, and to nobody', () => {
    const who: Ground = {
      ...ground,
      view: 'instructor',
      lines: [
        { key: 'who-20', id: 20, name: 'A', under: '' },
        { key: 'who-nobody', id: null, name: 'Nobody yet', under: '' },
      ],
    };
    expect(pressed(spot, { key: 'PageDown', shiftKey: false }, who)).toEqual({
      ...spot,
      instructorId: null,
    });
  });

  it('stays within the days of the draft and within the day', () => {
    expect(press('ArrowLeft', false, { ...spot, on: '2027-03-08' })?.on).toBe('2027-03-08');
    expect(press('ArrowRight', false, { ...spot, on: '2027-03-14' })?.on).toBe('2027-03-14');
    expect(press('ArrowUp', false, { ...spot, startsLocal: '00:00' })?.startsLocal).toBe('00:00');
    expect(press('ArrowDown', false, { ...spot, startsLocal: '23:05' })?.startsLocal).toBe('23:10');
  });

  it('lasts five minutes to four hours, and ends by midnight', () => {
    expect(lasting(spot, 0).minutes).toBe(5);
    expect(lasting(spot, 300).minutes).toBe(240);
    expect(lasting({ ...spot, startsLocal: '23:00' }, 90).minutes).toBe(60);
  });

  it('leaves other keys alone', () => {
    expect(press('Tab')).toBeNull();
  });
});

describe('The board', () => {
  it('shows the hours that are used and one more', () => {
    expect(hoursOf([{ ...spot, startsLocal: '07:30' }])).toEqual({ from: 360, to: 1260 });
    expect(hoursOf([{ ...spot, startsLocal: '22:30', minutes: 60 }])).toEqual({
      from: 480,
      to: 1440,
    });
  });

  it('puts sessions that lie across each other side by side', () => {
    const placed = sideBySide(
      [spot, { ...spot, id: 2, startsLocal: '18:30' }, { ...spot, id: 3, startsLocal: '20:00' }],
      50,
    );
    expect(placed.get(1)).toEqual({ at: 0, of: 2 });
    expect(placed.get(2)).toEqual({ at: 1, of: 2 });
    expect(placed.get(3)).toEqual({ at: 0, of: 1 });
  });

  it('lets one that follows the first stand under it, beside the long one', () => {
    const placed = sideBySide(
      [
        { ...spot, id: 1, startsLocal: '09:00', minutes: 120 },
        { ...spot, id: 2, startsLocal: '09:15', minutes: 45 },
        { ...spot, id: 3, startsLocal: '10:00', minutes: 45 },
      ],
      5,
    );
    expect(placed.get(3)).toEqual({ at: 1, of: 2 });
  });
});
