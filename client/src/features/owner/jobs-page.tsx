import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { jobQueries, useRunJob } from '@/api/jobs';
import type { Job, JobRun } from '@/api/types';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { fullDate } from '@/components/time/days';
import { momentWords, zoneName } from '@/components/time/zone';
import classes from './owner.module.css';

export function JobsPage() {
  const jobs = useQuery(jobQueries.list());
  return (
    <>
      <Title>Jobs</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        They run each night and catch up by themselves after a pause. Running one again changes
        nothing that is already done.
      </Text>
      <Asked query={jobs} waiting={<Lines count={3} height={140} />}>
        {(list) => (
          <ul className={classes.list}>
            {list.map((job) => (
              <OneJob key={job.name} job={job} />
            ))}
          </ul>
        )}
      </Asked>
    </>
  );
}

function OneJob({ job }: { job: Job }) {
  const run = useRunJob();
  return (
    <li className={classes.job}>
      <Group justify="space-between" align="flex-start" wrap="nowrap">
        <div>
          <Title order={2}>{job.title}</Title>
          <Text mb="xs">{job.does}</Text>
        </div>
        <Button
          variant="default"
          loading={run.isPending}
          onClick={() =>
            run.mutate(job.name, { onSuccess: ({ result }) => tell(`${job.title}: ${result}`) })
          }
          aria-label={`Run now: ${job.title}`}
        >
          Run now
        </Button>
      </Group>
      <Refused error={run.error} />
      <Runs job={job} />
    </li>
  );
}

function Runs({ job: { title, runs } }: { job: Job }) {
  const [last, ...earlier] = runs;
  if (last === undefined) return <Text c="dimmed">Has not run yet.</Text>;
  return (
    <>
      <Text>
        <strong>Last ran {ranWords(last)}</strong> for {fullDate(last.forDate)},{' '}
        {zoneName(last.zone)}. {last.result}
      </Text>
      {earlier.length > 0 && (
        <details className={classes.runs}>
          <summary>Earlier runs</summary>
          <ol aria-label={`Earlier runs of ${title}`}>
            {earlier.map((run) => (
              <li key={`${run.ranAt}${run.zone}${run.forDate}`}>
                {ranWords(run)}, {zoneName(run.zone)}: {run.result}
              </li>
            ))}
          </ol>
        </details>
      )}
    </>
  );
}

const ranWords = ({ ranAt, byHand }: JobRun) => `${momentWords(ranAt)}${byHand ? ', by hand' : ''}`;
