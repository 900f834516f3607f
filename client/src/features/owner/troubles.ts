import type { SessionSummary, TimetableConflict } from '@/api/types';
import { conflictWords } from './drafts/conflict-words';

/** What is wrong with each session that has something wrong, in words, by session id. What the owner accepted is not. */
export function troublesOf(
  sessions: readonly SessionSummary[],
  conflicts: readonly TimetableConflict[],
): Map<number, string[]> {
  const troubles = new Map<number, string[]>();
  for (const { id, instructorId, status } of sessions) {
    if (status !== 'open') continue;
    const found = new Set(
      conflicts
        .filter(({ isHard, keys }) => isHard && keys.includes(id))
        .map(({ kind }) => conflictWords[kind]),
    );
    if (instructorId == null) found.add('No instructor');
    if (found.size > 0) troubles.set(id, [...found]);
  }
  return troubles;
}
