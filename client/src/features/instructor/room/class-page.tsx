import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';
import { useLive } from '@/api/live';
import { useKeptNotes } from '@/api/notes';
import { useMe } from '@/api/session';
import { sessionsQueries } from '@/api/sessions';
import { Asked, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { ClassRoom } from './class-room';
import type { Stop } from './steps';
import { useWakeLock } from './wake-lock';
import classes from './room.module.css';

const route = getRouteApi('/alone/teach/sessions/$sessionId/class');

/** The session as it is taught, on the whole screen. Once it is open it needs no connection. */
export function ClassPage() {
  const { accountId } = useMe();
  const sessionId = Number(route.useParams().sessionId);
  const { at } = route.useSearch();
  const navigate = route.useNavigate();
  const router = useRouter();
  const roster = useQuery(sessionsQueries.roster(sessionId));
  // Asked for now, so that they are there when the connection is not.
  useQuery(sessionsQueries.notes(sessionId));
  useLive();
  useKeptNotes(accountId);
  useWakeLock();

  const back = {
    to: '/teach/sessions/$sessionId',
    params: { sessionId: String(sessionId) },
  } as const;
  // The way out is fetched now as well.
  useEffect(() => {
    void router.preloadRoute({
      to: '/teach/sessions/$sessionId',
      params: { sessionId: String(sessionId) },
    });
  }, [router, sessionId]);

  const show = (stop: Stop) => void navigate({ search: { at: stop }, replace: true });
  return (
    <div className={classes.page}>
      <Asked
        query={roster}
        waiting={
          <div className={classes.opening}>
            <Lines count={4} height={96} />
          </div>
        }
      >
        {(data) => (
          <ClassRoom
            roster={data}
            asOf={roster.dataUpdatedAt}
            asked={at}
            onShow={show}
            onLeave={() => void navigate(back)}
          />
        )}
      </Asked>
      {roster.data === undefined && roster.isError && (
        <Go {...back} m="md">
          Leave class mode
        </Go>
      )}
    </div>
  );
}
