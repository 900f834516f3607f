import type { ClassInfo, Instructor, SessionSummary } from '@/api/types';

/** What is wrong with each session that has something wrong, in words, by session id. */
export function troublesOf(
  sessions: readonly SessionSummary[],
  instructors: readonly Instructor[],
  classes: readonly ClassInfo[],
): Map<number, string[]> {
  const troubles = new Map<number, string[]>();
  const open = sessions.filter(({ status }) => status === 'open');
  for (const session of open) {
    const found = [
      session.instructorId == null ? 'No instructor' : null,
      unqualified(session, instructors, classes),
      open.some((other) => overlaps(session, other) && other.roomId === session.roomId)
        ? 'Room taken twice'
        : null,
      session.instructorId != null &&
      open.some((other) => overlaps(session, other) && other.instructorId === session.instructorId)
        ? `${session.instructorName ?? 'Instructor'} is elsewhere then`
        : null,
    ].filter((trouble) => trouble !== null);
    if (found.length > 0) troubles.set(session.id, found);
  }
  return troubles;
}

function unqualified(
  { instructorId, classId, on }: SessionSummary,
  instructors: readonly Instructor[],
  classes: readonly ClassInfo[],
): string | null {
  const needs = classes.find(({ id }) => id === classId)?.needsQualification;
  const instructor = instructors.find(({ id }) => id === instructorId);
  if (needs == null || instructor === undefined) return null;
  const held = instructor.qualifications.filter(({ kind }) => kind === needs);
  if (held.length === 0) return `Needs ${needs}`;
  return held.some(({ expiresOn }) => expiresOn >= on) ? null : `${needs} runs out before`;
}

const overlaps = (a: SessionSummary, b: SessionSummary) =>
  a.id !== b.id && a.startsAt < b.endsAt && b.startsAt < a.endsAt;
