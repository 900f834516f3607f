import type { Instructor, Location, StudioClass } from '@/api/types';
import { longDay } from '@/components/time/days';
import { clockName, endOf, otherClocks, type Spot } from './place';

/** The names of what a session is made of. */
export function namesOf(
  locations: readonly Location[],
  classes: readonly StudioClass[],
  instructors: readonly Instructor[],
) {
  const rooms = new Map(
    locations.flatMap((location) => location.rooms.map((room) => [room.id, { room, location }])),
  );
  const byClass = new Map(classes.map((one) => [one.id, one]));
  const byWho = new Map(instructors.map((one) => [one.id, one]));

  const className = (spot: Pick<Spot, 'classId'>) => byClass.get(spot.classId)?.name ?? 'Class';
  const who = (spot: Pick<Spot, 'instructorId'>) =>
    spot.instructorId == null ? 'Nobody yet' : (byWho.get(spot.instructorId)?.name ?? 'Instructor');
  /** Where two locations' clocks differ, the clock a session goes by is named with its room. */
  const clock = (spot: Pick<Spot, 'roomId' | 'on'>) => {
    const location = rooms.get(spot.roomId)?.location;
    return otherClocks(locations, spot.on).length > 0 ? ` (${clockName(location)})` : '';
  };
  const room = (spot: Pick<Spot, 'roomId' | 'on'>) => {
    const found = rooms.get(spot.roomId);
    return found === undefined
      ? 'Room'
      : `${found.room.name}, ${found.location.name}${clock(spot)}`;
  };
  const day = (spot: Pick<Spot, 'on'>) => longDay(spot.on);
  const time = (spot: Spot) => `${spot.startsLocal} to ${endOf(spot)}`;
  return {
    className,
    who,
    room,
    day,
    time,
    seatsOf: (roomId: number) => rooms.get(roomId)?.room.seats,
    session: (spot: Spot) =>
      `${className(spot)}, ${day(spot)}, ${time(spot)}, ${room(spot)}, ${who(spot)}`,
    /** What became another than it was, each by name; empty: nothing. */
    changes: (was: Omit<Spot, 'classId'>, now: Spot): string[] => {
      if (!now.isHeld) return was.isHeld ? ['called off'] : [];
      const [before, after] = [{ ...was, classId: now.classId }, now];
      return [
        was.isHeld ? null : 'held again',
        was.on === now.on ? null : `${day(before)} becomes ${day(after)}`,
        was.startsLocal === now.startsLocal && was.minutes === now.minutes
          ? null
          : `${time(before)} becomes ${time(after)}`,
        was.roomId === now.roomId ? null : `${room(before)} becomes ${room(after)}`,
        (was.instructorId ?? null) === (now.instructorId ?? null)
          ? null
          : `${who(before)} becomes ${who(after)}`,
        was.seats === now.seats ? null : `${was.seats} seats become ${now.seats}`,
      ].filter((part) => part !== null);
    },
  };
}

export type Named = ReturnType<typeof namesOf>;
