import type { WantedSession } from '@/api/drafts';
import type { DraftSession, Instructor, Location, TimetableConflict } from '@/api/types';
import { addDays, daysBetween } from '@/components/time/days';
import { clocksDiffer, zoneName } from '@/components/time/zone';

/** Where a session stands, or would stand. */
export type Spot = WantedSession;

export type View = 'room' | 'instructor';

/** One line of the board: a room, or somebody who teaches. */
export interface Line {
  key: string;
  /** Null: nobody yet. */
  id: number | null;
  name: string;
  under: string;
}

/** Minutes that a session moves at a time, and that its length changes at a time. */
export const step = 15;
export const lengthStep = 5;

export const minutesOf = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

export const clockOf = (minutes: number) =>
  `${String(Math.floor(minutes / 60) % 24).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

export const endOf = ({ startsLocal, minutes }: Pick<Spot, 'startsLocal' | 'minutes'>) =>
  clockOf(minutesOf(startsLocal) + minutes);

export const spotOf = (session: DraftSession): Spot => ({
  id: session.id,
  classId: session.classId,
  roomId: session.roomId,
  instructorId: session.instructorId,
  on: session.on,
  startsLocal: session.startsLocal,
  minutes: session.minutes,
  seats: session.seats,
  isHeld: session.isHeld,
});

export const isSameSpot = (a: Spot, b: Spot) =>
  a.on === b.on &&
  a.startsLocal === b.startsLocal &&
  a.minutes === b.minutes &&
  a.roomId === b.roomId &&
  (a.instructorId ?? null) === (b.instructorId ?? null) &&
  a.seats === b.seats &&
  a.classId === b.classId &&
  a.isHeld === b.isHeld;

export const linesOf = (
  view: View,
  locations: readonly Location[],
  instructors: readonly Instructor[],
): Line[] =>
  view === 'room'
    ? locations.flatMap((location) =>
        location.rooms.map(({ id, name, seats }) => ({
          key: `room-${id}`,
          id,
          name,
          under: `${location.name}, ${seats} seats`,
        })),
      )
    : [
        ...instructors.map(({ id, name }) => ({ key: `who-${id}`, id, name, under: '' })),
        { key: 'who-nobody', id: null, name: 'Nobody yet', under: 'needs an instructor' },
      ];

export const isOn = (view: View, line: Line, spot: Spot) =>
  (view === 'room' ? spot.roomId : (spot.instructorId ?? null)) === line.id;

/** The same session on another line of the board. */
export const onLine = (view: View, line: Line, spot: Spot): Spot =>
  view === 'room'
    ? { ...spot, roomId: line.id ?? spot.roomId }
    : { ...spot, instructorId: line.id };

export const startingAt = (spot: Spot, minutes: number): Spot => ({
  ...spot,
  startsLocal: clockOf(Math.min(Math.max(minutes, 0), 24 * 60 - Math.max(spot.minutes, step))),
});

export const lasting = (spot: Spot, minutes: number): Spot => ({
  ...spot,
  minutes: Math.min(Math.max(minutes, 5), 240, 24 * 60 - minutesOf(spot.startsLocal)),
});

export const onDay = (spot: Spot, day: string, first: string, last: string): Spot => ({
  ...spot,
  on: day < first ? first : day > last ? last : day,
});

interface Press {
  key: string;
  shiftKey: boolean;
}

export interface Ground {
  view: View;
  lines: readonly Line[];
  first: string;
  last: string;
}

/** What a key does to a session that is held; null when the key means nothing here. */
export function pressed(spot: Spot, { key, shiftKey }: Press, ground: Ground): Spot | null {
  const { view, lines, first, last } = ground;
  const start = minutesOf(spot.startsLocal);
  const line = lines.findIndex((each) => isOn(view, each, spot));
  const onNext = (by: number) => {
    const next = lines[Math.min(Math.max(line + by, 0), lines.length - 1)];
    return next === undefined ? spot : onLine(view, next, spot);
  };
  switch (key) {
    case 'ArrowUp':
      return shiftKey ? onNext(-1) : startingAt(spot, start - step);
    case 'ArrowDown':
      return shiftKey ? onNext(1) : startingAt(spot, start + step);
    case 'PageUp':
      return onNext(-1);
    case 'PageDown':
      return onNext(1);
    case 'ArrowLeft':
      return onDay(spot, addDays(spot.on, -1), first, last);
    case 'ArrowRight':
      return onDay(spot, addDays(spot.on, 1), first, last);
    case '+':
    case '=':
      return lasting(spot, spot.minutes + lengthStep);
    case '-':
    case '_':
      return lasting(spot, spot.minutes - lengthStep);
    default:
      return null;
  }
}

/** The hours the board shows: those that are used, an hour more on each side, and the usual day. */
export function hoursOf(spots: readonly Spot[]) {
  const starts = spots.map(({ startsLocal }) => minutesOf(startsLocal));
  const ends = spots.map((spot) => minutesOf(spot.startsLocal) + spot.minutes);
  return {
    from: Math.max(0, Math.min(9 * 60, ...starts.map((at) => Math.floor(at / 60) * 60)) - 60),
    to: Math.min(24 * 60, Math.max(20 * 60, ...ends.map((at) => Math.ceil(at / 60) * 60)) + 60),
  };
}

/** Sessions of one line and day that lie across each other stand side by side: where each stands, of how many. */
export function sideBySide(
  spots: readonly (Spot & { id: number })[],
  least: number,
): Map<number, { at: number; of: number }> {
  const placed = new Map<number, { at: number; of: number }>();
  const inOrder = [...spots].sort((a, b) => a.startsLocal.localeCompare(b.startsLocal));
  let group: { id: number; at: number }[] = [];
  let ends: number[] = [];
  const close = () => {
    for (const { id, at } of group) placed.set(id, { at, of: ends.length });
    group = [];
    ends = [];
  };
  for (const spot of inOrder) {
    const start = minutesOf(spot.startsLocal);
    if (group.length > 0 && ends.every((end) => end <= start)) close();
    const free = ends.findIndex((end) => end <= start);
    const at = free === -1 ? ends.length : free;
    ends[at] = start + Math.max(spot.minutes, least);
    group.push({ id: spot.id, at });
  }
  close();
  return placed;
}

/** Conflicts by the key of each session they are about. */
export function conflictsByKey(conflicts: readonly TimetableConflict[]) {
  const found = new Map<number, TimetableConflict[]>();
  for (const conflict of conflicts)
    for (const key of conflict.keys) found.set(key, [...(found.get(key) ?? []), conflict]);
  return found;
}

/** Locations whose wall clock shows something else than the first one's on that day. */
export const otherClocks = (locations: readonly Location[], day: string) => {
  const [first, ...others] = locations;
  return first === undefined
    ? []
    : others.filter(({ zone }) => clocksDiffer(`${day}T12:00:00Z`, zone, first.zone));
};

export const clockName = (location: Location | undefined) =>
  location === undefined ? '' : zoneName(location.zone);

export const weeksBetween = (first: string, last: string) =>
  Array.from({ length: Math.floor(daysBetween(first, last) / 7) + 1 }, (_, week) =>
    addDays(first, week * 7),
  );
