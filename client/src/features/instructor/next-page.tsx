import { useQuery } from '@tanstack/react-query';
import { sessionsQueries } from '@/api/sessions';
import { useMe } from '@/api/session';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { addDays } from '@/components/time/days';
import { nextOf } from './next';
import { SessionList } from './session-list';
import { SessionView } from './session-view';
import classes from './teach.module.css';

const ahead = 14;

/** Her next session first, then the rest of her fortnight. */
export function NextPage() {
  const { today } = useMe();
  const sessions = useQuery(sessionsQueries.mine(today, addDays(today, ahead)));
  return (
    <Asked query={sessions} waiting={<Lines count={3} height={160} />}>
      {(list) => {
        const { next, later } = nextOf(list, today, new Date());
        if (next === undefined)
          return (
            <Empty title="You teach nothing in the next two weeks">
              Earlier sessions are under “My weeks”.
            </Empty>
          );
        return (
          <>
            <SessionView sessionId={next.id} />
            <section className={classes.later} aria-labelledby="later">
              <SessionList id="later" title="After that" sessions={later} today={today} />
            </section>
          </>
        );
      }}
    </Asked>
  );
}
