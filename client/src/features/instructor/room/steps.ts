import type { Planned } from '@/api/types';

/** Where class mode stands: at a movement of the plan by its place, or at the notes that follow the last. */
export type Stop = number | 'notes';

/** All stops in order. A class without a plan has one page of what to mind, at place 1. */
export const stopsOf = (plan: readonly Pick<Planned, 'position'>[]): Stop[] =>
  plan.length === 0 ? [1, 'notes'] : [...plan.map(({ position }) => position), 'notes'];

/** A stop there is: the one asked for, or the first. */
export const stopAt = (stops: readonly Stop[], asked: Stop | undefined): Stop =>
  stops.find((stop) => stop === asked) ?? stops[0] ?? 'notes';

/** The stop a step away; at either end it stays. */
export function stepFrom(stops: readonly Stop[], at: Stop, step: 1 | -1): Stop {
  const next = stops.indexOf(at) + step;
  return stops[Math.max(0, Math.min(next, stops.length - 1))] ?? at;
}

/** Which way a key leads, if any. */
export function stepOfKey(key: string): 1 | -1 | null {
  if (key === ' ' || key === 'ArrowRight' || key === 'PageDown') return 1;
  return key === 'ArrowLeft' || key === 'PageUp' ? -1 : null;
}

/** Minutes of the plan before a stop. */
export const minutesBefore = (plan: readonly Pick<Planned, 'position' | 'minutes'>[], at: Stop) =>
  plan
    .filter(({ position }) => at === 'notes' || position < at)
    .reduce((sum, { minutes }) => sum + minutes, 0);
