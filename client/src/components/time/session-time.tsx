import type { SessionSummary } from '@/api/types';
import { clocksDiffer, zoneName } from './zone';
import classes from './session-time.module.css';

type Timed = Pick<SessionSummary, 'startsAt' | 'startsLocal' | 'endsLocal' | 'zone' | 'on'>;

/** `18:00–19:00`, in the location's zone, which is named when the reader's clock shows another time. */
export function SessionTime({ session, from = false }: { session: Timed; from?: boolean }) {
  return (
    <time dateTime={session.startsAt} className={classes.time}>
      {from ? session.startsLocal : `${session.startsLocal}–${session.endsLocal}`}
      {clocksDiffer(session.startsAt, session.zone) && (
        <>
          {' '}
          <span className={classes.zone}>{zoneName(session.zone)}</span>
        </>
      )}
    </time>
  );
}
