export const weekdays = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const;

/** Minutes as people say hours. */
export const hoursWords = (minutes: number) =>
  minutes % 60 === 0
    ? `${minutes / 60} h`
    : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;

export const perWords = { session: 'per session', head: 'per head', hour: 'per hour' } as const;
