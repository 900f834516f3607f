import { useQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { catalogueQueries } from '@/api/catalogue';
import { planQueries } from '@/api/plans';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { useHere } from './here';
import { PlanEditor } from './plan-editor';
import classes from './plans.module.css';

/** One class's plan, or that of one of its sessions. */
export function PlanPage() {
  const { classId } = useParams({ strict: false });
  const { session } = useSearch({ strict: false });
  const { list, plan } = useHere();
  const id = Number(classId);
  const ofClass = useQuery(planQueries.ofClass(id));
  const ofSession = useQuery({
    ...planQueries.ofSession(session ?? 0),
    enabled: session !== undefined,
  });
  const movements = useQuery(catalogueQueries.movements());
  const waiting = <Lines count={8} height={72} />;
  return (
    <div className={classes.page}>
      <Go to={list} display="inline-block" mb="sm">
        All class plans
      </Go>
      <Asked query={ofClass} waiting={waiting}>
        {(kept) => (
          <Asked query={movements} waiting={waiting}>
            {(all) =>
              session === undefined ? (
                <PlanEditor key={id} ofClass={kept} movements={all} />
              ) : ofSession.isError && ofSession.data === undefined ? (
                <Refused error={ofSession.error}>
                  <Go to={plan} params={{ classId: String(id) }}>
                    The plan of {kept.className}
                  </Go>
                </Refused>
              ) : (
                <Asked query={ofSession} waiting={waiting}>
                  {(own) => <PlanEditor key={id} ofClass={kept} ofSession={own} movements={all} />}
                </Asked>
              )
            }
          </Asked>
        )}
      </Asked>
    </div>
  );
}
