import { Alert, Stack, Text, Title } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { seriesQueries } from '@/api/series';
import type { SeriesRequest } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { fullDate, shortDay } from '@/components/time/days';
import { clocksDiffer, zoneName } from '@/components/time/zone';
import { Needs } from '@/components/verdict/mark';
import classes from './series.module.css';

interface Props {
  request: SeriesRequest | null;
  /** What is missing before there are dates. */
  unfinished: string | null;
}

/** The dates a rule gives while it is written, in the location's zone, each with what stands against it. */
export function PreviewDates({ request, unfinished }: Props) {
  const [asked] = useDebouncedValue(request, 350);
  return (
    <section aria-labelledby="dates-heading">
      <Title order={2} id="dates-heading">
        Its dates
      </Title>
      {request === null || asked === null ? (
        <Text c="dimmed">{unfinished ?? 'Choose a class, a room and a first day.'}</Text>
      ) : (
        <Dates request={asked} />
      )}
    </section>
  );
}

function Dates({ request }: { request: SeriesRequest }) {
  const preview = useQuery(seriesQueries.preview(request));
  return (
    <Asked query={preview} waiting={<Lines count={6} height={32} />}>
      {({ words, zone, dates, goesOn, laidOutTo, conflicts }) => (
        <Stack gap="sm">
          <Text fw={600}>{words}</Text>
          {dates.some(({ startsAt }) => clocksDiffer(startsAt, zone)) && (
            <Text c="dimmed">All times are {zoneName(zone)}; your own clock shows another.</Text>
          )}
          {conflicts.some(({ isHard }) => isHard) && (
            <Alert color="brick" variant="light" title="It cannot be saved like this">
              Leave the dates out that are marked, or choose another room, hour or instructor.
            </Alert>
          )}
          <div className={classes.dates} role="region" tabIndex={0} aria-label="Dates of the rule">
            <ul>
              {dates.map(({ seriesOn, on, startsLocal, state, says, conflicts: against = [] }) => (
                <li key={seriesOn} data-off={state === 'skipped' || state === 'shut' || undefined}>
                  <span>
                    {shortDay(on)} {startsLocal}
                  </span>
                  <span>
                    {state === 'skipped' && 'Left out'}
                    {state === 'shut' && <Needs tone="mind">Shut: {says}</Needs>}
                    {state === 'planned' && says}
                    {against.map((words) => (
                      <Needs key={words} tone="stop">
                        {words}
                      </Needs>
                    ))}
                  </span>
                </li>
              ))}
            </ul>
          </div>
          <Text c="dimmed">
            {goesOn && 'And so on. '}
            Laid out until {fullDate(laidOutTo)} at once; each night adds what follows.
          </Text>
        </Stack>
      )}
    </Asked>
  );
}
