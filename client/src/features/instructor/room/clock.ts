import type { Stop } from './steps';

/** Time spent at each stop, in milliseconds. It tells the time and does nothing else. */
export interface Spent {
  at: Stop;
  /** When this stop was come to. */
  since: number;
  before: Readonly<Partial<Record<Stop, number>>>;
}

export const begin = (at: Stop, now: number): Spent => ({ at, since: now, before: {} });

/** Goes to a stop; coming back to one goes on counting where it was left. */
export const goTo = (spent: Spent, to: Stop, now: number): Spent =>
  to === spent.at
    ? spent
    : {
        at: to,
        since: now,
        before: { ...spent.before, [spent.at]: elapsed(spent, now) },
      };

/** Time at the stop where it stands. A clock set back counts as no time. */
export const elapsed = ({ at, since, before }: Spent, now: number) =>
  (before[at] ?? 0) + Math.max(0, now - since);

/** `3 of 5 min`; past the planned time it says so and no more. */
export function clockWords(milliseconds: number, planned: number): string {
  const minutes = Math.floor(milliseconds / 60_000);
  return minutes < planned
    ? `${minutes} of ${planned} min`
    : minutes === planned
      ? `${planned} min are over`
      : `${minutes} min, planned ${planned}`;
}
