// Days are ISO strings, `2026-03-04`, as they come; arithmetic on them never meets a time zone.

const dayLength = 86_400_000;
const utc = (day: string) => Date.parse(`${day}T00:00:00Z`);

export const addDays = (day: string, days: number) =>
  new Date(utc(day) + days * dayLength).toISOString().slice(0, 10);

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export const daysBetween = (from: string, to: string) =>
  Math.round((utc(to) - utc(from)) / dayLength);

/** The Monday of the week the day is in. */
export const mondayOf = (day: string) => addDays(day, -((new Date(utc(day)).getUTCDay() + 6) % 7));

const format = (options: Intl.DateTimeFormatOptions) => {
  const formatter = new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', ...options });
  return (day: string) => formatter.format(utc(day)).replace(',', '');
};

/** `Wednesday 4 March` */
export const longDay = format({ weekday: 'long', day: 'numeric', month: 'long' });
/** `Wed 4 Mar` */
export const shortDay = format({ weekday: 'short', day: 'numeric', month: 'short' });
/** `4 March 2026`, for dates that may be in another year */
export const fullDate = format({ day: 'numeric', month: 'long', year: 'numeric' });
/** `4 Mar` */
export const monthAndYear = format({ month: 'long', year: 'numeric' });

export const dayAndMonth = format({ day: 'numeric', month: 'short' });
/** `Wed` */
export const weekday = format({ weekday: 'short' });

/** The word a person would use, where there is one. */
export const nearDay = (day: string, today: string) => {
  const ahead = daysBetween(today, day);
  return ahead === 0
    ? 'today'
    : ahead === 1
      ? 'tomorrow'
      : ahead === -1
        ? 'yesterday'
        : shortDay(day);
};

/** Something given in days since birth: days at first, then weeks. */
export const sinceBirth = (days: number) => {
  if (days < 14) return days === 1 ? '1 day' : `${days} days`;
  const over = days % 7;
  return over === 0 ? `${Math.floor(days / 7)} weeks` : `${Math.floor(days / 7)}w ${over}d`;
};

/** `24w 3d` while pregnant; after the birth the time since it. */
export const ageWords = (now?: { age?: string | null; daysSinceBirth?: number | null } | null) =>
  now?.daysSinceBirth == null ? now?.age : sinceBirth(now.daysSinceBirth);

const numeric = /^(\d{1,2})[./\s-](\d{1,2})[./\s-](\d{4}|\d{2})$/;
const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/;
const named = /^(\d{1,2})\s+([a-z]{3})[a-z]*\.?\s+(\d{4}|\d{2})$/i;
const months = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');

/** Reads a day as people type it, day first: `4/3/2026`, `4 mar 26`, `2026-03-04`. */
export const readDay = (text: string): string | null => {
  const typed = text.trim();
  const isoParts = iso.exec(typed);
  if (isoParts) return real(Number(isoParts[1]), Number(isoParts[2]), Number(isoParts[3]));
  const parts = numeric.exec(typed) ?? named.exec(typed);
  if (!parts) return null;
  const [, day = '', month = '', year = ''] = parts;
  const number = months.indexOf(month.slice(0, 3).toLowerCase()) + 1;
  return real(
    year.length === 2 ? 2000 + Number(year) : Number(year),
    number > 0 ? number : Number(month),
    Number(day),
  );
};

const real = (year: number, month: number, day: number) => {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day
    ? date.toISOString().slice(0, 10)
    : null;
};
