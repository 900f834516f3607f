import type { Flag, Severity } from '@/api/types';

const heaviness: Record<Severity, number> = { urgent: 0, attention: 1, info: 2 };

/** Flags of one kind about one person or session: looked at, and read, together. */
export interface FlagGroup {
  key: string;
  kind: Flag['kind'];
  severity: Severity;
  flags: Flag[];
}

/** The heaviest first, and among those the longest standing. */
export function grouped(flags: readonly Flag[]): FlagGroup[] {
  const groups = new Map<string, FlagGroup>();
  for (const flag of flags) {
    const about =
      flag.clientId == null ? `session ${flag.sessionId ?? ''}` : `client ${flag.clientId}`;
    const key = `${flag.kind} ${about}`;
    const group = groups.get(key);
    if (group === undefined)
      groups.set(key, { key, kind: flag.kind, severity: flag.severity, flags: [flag] });
    else {
      group.flags.push(flag);
      if (heaviness[flag.severity] < heaviness[group.severity]) group.severity = flag.severity;
    }
  }
  return [...groups.values()].sort(
    (a, b) => heaviness[a.severity] - heaviness[b.severity] || sinceOf(a).localeCompare(sinceOf(b)),
  );
}

const sinceOf = ({ flags }: FlagGroup) => flags.map(({ since }) => since).sort()[0] ?? '';

/** Whether one waits for somebody: neither a mere note nor read already. */
export const waits = ({ flags }: FlagGroup) =>
  flags.some(({ severity, isNew }) => isNew && severity !== 'info');

/** How many do. */
export const waitingFor = (flags: readonly Flag[]) => grouped(flags).filter(waits).length;
