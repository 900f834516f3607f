import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { seriesQueries } from '@/api/series';
import type { Series } from '@/api/types';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { shortDay } from '@/components/time/days';
import { clocksDiffer, zoneName } from '@/components/time/zone';
import { Needs } from '@/components/verdict/mark';
import classes from './series.module.css';

export function SeriesPage() {
  const series = useQuery(seriesQueries.list());
  return (
    <>
      <Group justify="space-between" align="flex-end" mb="xs">
        <Title>Series</Title>
        <Button component={Link} to="/studio/series/new">
          New series
        </Button>
      </Group>
      <Text c="dimmed" mb="lg" maw="46rem">
        Classes that come again by a rule. Their hour stays when the clocks change, and days on
        which the location is shut are left out.
      </Text>
      <Asked query={series} waiting={<Lines count={6} height={72} />}>
        {(list) =>
          list.length === 0 ? (
            <Empty title="No series yet">Make one, and its sessions are laid out at once.</Empty>
          ) : (
            [...new Set(list.map(({ locationName }) => locationName))].map((place) => (
              <section key={place} aria-label={place}>
                <Title order={2} mt="lg" mb="xs">
                  {place}
                </Title>
                <ul className={classes.list}>
                  {list
                    .filter(({ locationName }) => locationName === place)
                    .map((one) => (
                      <One key={one.id} series={one} />
                    ))}
                </ul>
              </section>
            ))
          )
        }
      </Asked>
    </>
  );
}

function One({ series }: { series: Series }) {
  const next = series.dates[0];
  return (
    <li className={classes.series}>
      <div>
        <Go
          to="/studio/series/$seriesId"
          params={{ seriesId: String(series.id) }}
          fw={600}
          aria-label={`${series.className}: ${series.words}`}
        >
          {series.className}
        </Go>
        <Text>
          {series.words}
          {next && clocksDiffer(next.startsAt, series.zone) && `, ${zoneName(series.zone)}`}
        </Text>
        <Text size="sm" c="dimmed">
          {series.roomName} · {series.instructorName ?? 'nobody teaches it yet'} · {series.minutes}{' '}
          minutes · {series.seats} seats
        </Text>
        {series.missing > 0 && (
          <Needs tone="stop">
            {series.missing === 1
              ? '1 date could not be laid out'
              : `${series.missing} dates could not be laid out`}
          </Needs>
        )}
      </div>
      {series.hasEnded ? (
        <Text c="dimmed">It has ended.</Text>
      ) : (
        <ul className={classes.next} aria-label="Next dates">
          {series.dates.map(({ seriesOn, on, state, says }) => (
            <li key={seriesOn}>
              {shortDay(on)}
              {state === 'shut' && ` (shut: ${says ?? ''})`}
              {state === 'skipped' && ' (left out)'}
              {state === 'calledOff' && ' (called off)'}
              {state === 'missing' && ' (missing)'}
            </li>
          ))}
        </ul>
      )}
    </li>
  );
}
