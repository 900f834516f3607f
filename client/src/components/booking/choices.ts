import type { Choice, Reason } from '@/api/types';

/** Sessions she may have now, the best first as the server ordered them. */
export const open = (choices: readonly Choice[]) =>
  choices.filter(({ canBook, bookingId }) => canBook !== 'no' && bookingId == null);

export interface Refusals {
  key: string;
  className: string;
  verdict: Choice['fit']['verdict'];
  reasons: readonly Reason[];
  /** The server's own words where it is not her fit that stands in the way. */
  message: string | null;
  sessions: Choice['session'][];
}

/** Sessions she may not have, those of one class with the same reasons told once. */
export function refused(choices: readonly Choice[]): Refusals[] {
  const groups = new Map<string, Refusals>();
  for (const { session, fit, canBook, bookingId, refusal } of choices) {
    if (canBook !== 'no' || bookingId != null) continue;
    const reasons = fit.reasons.filter(({ verdict }) => verdict === fit.verdict);
    const barred = fit.verdict === 'needsClearance' || fit.verdict === 'notSuitable';
    const message = barred ? null : (refusal?.message ?? fit.summary);
    const key = [session.classId, fit.verdict, message, ...reasons.map(({ text }) => text)].join(
      '|',
    );
    const group = groups.get(key);
    if (group) group.sessions.push(session);
    else
      groups.set(key, {
        key,
        className: session.className,
        verdict: fit.verdict,
        reasons: barred ? reasons : [],
        message,
        sessions: [session],
      });
  }
  return [...groups.values()];
}

/** Choices under the day they are held on, days in order, each day's in the server's order of fit. */
export function byDay(choices: readonly Choice[]): [day: string, choices: Choice[]][] {
  const days = new Map<string, Choice[]>();
  for (const choice of choices) {
    const day = days.get(choice.session.on);
    if (day) day.push(choice);
    else days.set(choice.session.on, [choice]);
  }
  return [...days].sort(([a], [b]) => a.localeCompare(b));
}
