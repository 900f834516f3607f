/** A rule as the form holds it: weeks and weekdays, or any rule of RFC 5545 as it is written. */
export interface RuleDraft {
  kind: 'weekly' | 'own';
  days: string[];
  every: number;
  ends: 'never' | 'on' | 'after';
  until: string | null;
  count: number;
  own: string;
}

export const weekdays = [
  { code: 'MO', short: 'Mon', long: 'Monday' },
  { code: 'TU', short: 'Tue', long: 'Tuesday' },
  { code: 'WE', short: 'Wed', long: 'Wednesday' },
  { code: 'TH', short: 'Thu', long: 'Thursday' },
  { code: 'FR', short: 'Fri', long: 'Friday' },
  { code: 'SA', short: 'Sat', long: 'Saturday' },
  { code: 'SU', short: 'Sun', long: 'Sunday' },
] as const;

export const newRule = (days: string[] = []): RuleDraft => ({
  kind: 'weekly',
  days,
  every: 1,
  ends: 'never',
  until: null,
  count: 8,
  own: '',
});

export const ruleOf = (draft: RuleDraft): string => {
  if (draft.kind === 'own') return draft.own.trim();
  const days = weekdays.filter(({ code }) => draft.days.includes(code)).map(({ code }) => code);
  return [
    'FREQ=WEEKLY',
    ...(draft.every > 1 ? [`INTERVAL=${draft.every}`] : []),
    ...(draft.ends === 'on' && draft.until !== null
      ? [`UNTIL=${draft.until.replaceAll('-', '')}`]
      : []),
    ...(draft.ends === 'after' ? [`COUNT=${draft.count}`] : []),
    ...(days.length > 0 ? [`BYDAY=${days.join(',')}`] : []),
  ].join(';');
};

/** What keeps the form from asking for dates; null: nothing. */
export const unfinished = (draft: RuleDraft): string | null =>
  draft.kind === 'own'
    ? draft.own.trim() === ''
      ? 'Write the rule first.'
      : null
    : draft.days.length === 0
      ? 'Choose at least one day of the week.'
      : draft.ends === 'on' && draft.until === null
        ? 'Choose its last day.'
        : null;

const known = new Set(['FREQ', 'INTERVAL', 'UNTIL', 'COUNT', 'BYDAY']);

/** A rule that is kept, taken apart again; one that the weekdays cannot say stays as it is written. */
export const draftOf = (rule: string): RuleDraft => {
  const parts = new Map(rule.split(';').map((part) => part.split('=', 2) as [string, string]));
  const days = parts.get('BYDAY')?.split(',') ?? [];
  const [whole, year = '', month = '', day = ''] =
    /^(\d{4})(\d{2})(\d{2})$/.exec(parts.get('UNTIL') ?? '') ?? [];
  const plain =
    parts.get('FREQ') === 'WEEKLY' &&
    days.length > 0 &&
    [...parts.keys()].every((name) => known.has(name));
  return {
    kind: plain ? 'weekly' : 'own',
    days: plain ? days : [],
    every: Number(parts.get('INTERVAL') ?? 1),
    ends: whole !== undefined ? 'on' : parts.has('COUNT') ? 'after' : 'never',
    until: whole !== undefined ? `${year}-${month}-${day}` : null,
    count: Number(parts.get('COUNT') ?? 8),
    own: rule,
  };
};
