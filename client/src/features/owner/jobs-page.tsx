import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { jobQueries, useRunJob } from '@/api/jobs';
import type { Job } from '@/api/types';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { fullDate } from '@/components/time/days';
import { momentWords } from '@/components/time/zone';
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
      {job.runs.length === 0 ? (
        <Text c="dimmed">Has not run yet.</Text>
      ) : (
        <div className={classes.runs}>
          <table aria-label={`Last runs of ${job.title}`}>
            <thead>
              <tr>
                <th scope="col">Ran</th>
                <th scope="col">For</th>
                <th scope="col">Result</th>
                <th scope="col">Changed</th>
              </tr>
            </thead>
            <tbody>
              {job.runs.map((one) => (
                <tr key={`${one.ranAt}${one.zone ?? ''}${one.forDate ?? ''}`}>
                  <td>
                    {momentWords(one.ranAt)}
                    {one.byHand && ', by hand'}
                  </td>
                  <td>
                    {one.forDate != null && fullDate(one.forDate)} {one.zone}
                  </td>
                  <td>{one.result}</td>
                  <td>{one.changed}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </li>
  );
}
