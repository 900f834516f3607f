import { Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useEffect } from 'react';
import { assignmentQueries } from '@/api/assignments';
import type { AssignmentRun } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { momentWords } from '@/components/time/zone';
import { AssignForm } from './assign-form';
import { OneAssignment } from './one-assignment';
import { spanWords, statusWords } from './words';
import classes from './assign.module.css';

const route = getRouteApi('/inside/studio/assign');

/** Choose, watch, compare, then open as a draft. Nothing is published from here. */
export function AssignPage() {
  const { run } = route.useSearch();
  const navigate = route.useNavigate();
  const runs = useQuery(assignmentQueries.list());
  const show = (id?: number) => void navigate({ search: { run: id } });
  const going = runs.data?.find(({ status }) => status === 'running')?.id;
  // What is going is looked at by its own address, so that the page stays with it when it ends.
  useEffect(() => {
    if (run === undefined && going !== undefined)
      void navigate({ search: { run: going }, replace: true });
  }, [run, going, navigate]);
  return (
    <>
      <Title>Assign a term</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        Gives all sessions of some weeks to instructors: whoever is qualified and free, within her
        hours, with as few changes as can be. What is found becomes a draft; nobody is told anything
        until the draft is published.
      </Text>
      <Asked query={runs} waiting={<Lines count={3} height={80} />}>
        {(list) => {
          const shown = run ?? going;
          return shown === undefined ? (
            <>
              <AssignForm onBegun={show} />
              <Earlier runs={list} />
            </>
          ) : (
            <OneAssignment key={shown} id={shown} onLeave={() => show()} />
          );
        }}
      </Asked>
    </>
  );
}

function Earlier({ runs }: { runs: AssignmentRun[] }) {
  if (runs.length === 0) return null;
  return (
    <section className={classes.part}>
      <Title order={2}>Earlier ones</Title>
      <ul className={classes.list}>
        {runs.map((run) => (
          <li key={run.id}>
            <Go to="/studio/assign" search={{ run: run.id }}>
              {spanWords(run.asked)}
            </Go>
            , asked {momentWords(run.madeAt)}: {statusWords(run)}
          </li>
        ))}
      </ul>
    </section>
  );
}
