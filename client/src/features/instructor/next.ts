import type { SessionSummary } from '@/api/types';

/**
 * The session going on or coming up, and those after it. The studio says which day it is; the
 * reader's clock is only believed about the hour when it agrees about the day.
 */
export function nextOf(sessions: readonly SessionSummary[], today: string, now: Date) {
  const agrees = Math.abs(Date.parse(`${today}T12:00:00Z`) - now.getTime()) < 36 * 3_600_000;
  const ahead = sessions
    .filter(({ status, on }) => status === 'open' && on >= today)
    .filter(({ endsAt }) => !agrees || new Date(endsAt) > now)
    .sort((a, b) => a.startsAt.localeCompare(b.startsAt));
  return { next: ahead[0], later: ahead.slice(1) };
}
