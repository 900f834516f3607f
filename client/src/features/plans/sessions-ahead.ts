import { useQuery } from '@tanstack/react-query';
import { useMe } from '@/api/session';
import { sessionsQueries } from '@/api/sessions';
import type { SessionSummary } from '@/api/types';
import { addDays } from '@/components/time/days';

const ownersDays = 28;
const herDays = 60;

/** The sessions of a class from today on: the owner's all, an instructor's her own. */
export function useSessionsAhead(classId: number) {
  const { today, roles } = useMe();
  const isOwner = roles.includes('owner');
  const select = (sessions: SessionSummary[]) =>
    sessions
      .filter((session) => session.classId === classId && session.status === 'open')
      .sort((a, b) => a.startsAt.localeCompare(b.startsAt));
  const all = useQuery({
    ...sessionsQueries.between(today, addDays(today, ownersDays)),
    enabled: isOwner,
    select,
  });
  const hers = useQuery({
    ...sessionsQueries.mine(today, addDays(today, herDays)),
    enabled: !isOwner,
    select,
  });
  return isOwner ? all : hers;
}
