import type { ConflictKind } from '@/api/types';

/** A word for each kind, short enough to stand on a session; the whole sentence comes from the server. */
export const conflictWords: Record<ConflictKind, string> = {
  roomTaken: 'Room taken',
  roomTooSmall: 'Room too small',
  seatsTaken: 'Too few seats',
  locationShut: 'Shut that day',
  instructorTaken: 'Teaches elsewhere',
  noTimeToTravel: 'No time to travel',
  notQualified: 'Not qualified',
  onLeave: 'Away that day',
  hasLeft: 'No longer here',
  outsideHours: 'Outside her hours',
  tooManyHours: 'Too many hours',
  tooLittleRest: 'Too little rest',
  shorterThanPlan: 'Shorter than plan',
};
