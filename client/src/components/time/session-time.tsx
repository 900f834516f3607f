import type { SessionSummary } from '@/api/types';
import { clocksDiffer, zoneName } from './zone';

type Timed = Pick<SessionSummary, 'startsAt' | 'startsLocal' | 'endsLocal' | 'zone' | 'on'>;

/** `18:00–19:00`, in the location's zone, which is named when the reader's clock shows another time. */
export function SessionTime({ session, from = false }: { session: Timed; from?: boolean }) {
  return (
    <time dateTime={session.startsAt} style={{ whiteSpace: 'nowrap' }}>
      {from ? session.startsLocal : `${session.startsLocal}–${session.endsLocal}`}
      {clocksDiffer(session.startsAt, session.zone) && ` ${zoneName(session.zone)}`}
    </time>
  );
}
