import type { SessionSummary } from '@/api/types';

/** What is wrong with each session that has something wrong, in words, by session id. */
export function troublesOf(sessions: readonly SessionSummary[]): Map<number, string[]> {
  const troubles = new Map<number, string[]>();
  const open = sessions.filter(({ status }) => status === 'open');
  for (const session of open) {
    const meanwhile = open.filter((other) => overlaps(session, other));
    const found = [
      session.instructorId == null && 'No instructor',
      session.instructorQualified === false && 'Qualification not valid that day',
      meanwhile.some(({ roomId }) => roomId === session.roomId) && 'Room taken twice',
      session.instructorId != null &&
        meanwhile.some(({ instructorId }) => instructorId === session.instructorId) &&
        'Instructor is elsewhere then',
    ].filter((trouble) => trouble !== false);
    if (found.length > 0) troubles.set(session.id, found);
  }
  return troubles;
}

const overlaps = (a: SessionSummary, b: SessionSummary) =>
  a.id !== b.id && a.startsAt < b.endsAt && b.startsAt < a.endsAt;
