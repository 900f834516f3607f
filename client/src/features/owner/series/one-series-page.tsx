import { Button, Group, Modal, Stack, Text, Title } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { seriesQueries, useEndSeries, useSkipDate } from '@/api/series';
import { useMe } from '@/api/session';
import type { Series, SeriesDate } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { Asked, Empty, Lines, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { addDays, fullDate, longDay, shortDay } from '@/components/time/days';
import { clocksDiffer, zoneName } from '@/components/time/zone';
import { Needs } from '@/components/verdict/mark';
import { ChangeSeries } from './change-series';
import { Consequences, isRefused } from './consequences';
import classes from './series.module.css';

const route = getRouteApi('/inside/studio/series/$seriesId');

export function OneSeriesPage() {
  const { seriesId } = route.useParams();
  const series = useQuery(seriesQueries.one(Number(seriesId)));
  return (
    <Asked query={series} waiting={<Lines count={8} />}>
      {(one) => <One key={one.id} series={one} />}
    </Asked>
  );
}

function One({ series }: { series: Series }) {
  const [doing, setDoing] = useState<'end' | SeriesDate | null>(null);
  const close = () => setDoing(null);
  const differs = series.dates.some(({ startsAt }) => clocksDiffer(startsAt, series.zone));
  return (
    <>
      <Go to="/studio/series">All series</Go>
      <Title mt="xs">{series.className}</Title>
      <Text size="lg">
        {series.words}
        {differs && `, ${zoneName(series.zone)}`}
      </Text>
      <Text c="dimmed" mb="lg">
        {series.roomName}, {series.locationName} ·{' '}
        {series.instructorName ?? 'nobody teaches it yet'} · {series.minutes} minutes ·{' '}
        {series.seats} seats
        {series.continuesId != null && (
          <>
            {' · '}
            <Go to="/studio/series/$seriesId" params={{ seriesId: String(series.continuesId) }}>
              goes on from an earlier series
            </Go>
          </>
        )}
      </Text>
      <div className={classes.two}>
        <section aria-labelledby="its-dates">
          <Group justify="space-between">
            <Title order={2} id="its-dates">
              Dates ahead
            </Title>
            {!series.hasEnded && (
              <Button variant="default" size="sm" onClick={() => setDoing('end')}>
                End the series
              </Button>
            )}
          </Group>
          <Text c="dimmed" mb="sm">
            Laid out until {fullDate(series.laidOutTo)}; each night adds what follows.
          </Text>
          {series.dates.length === 0 ? (
            <Empty title="No dates ahead" />
          ) : (
            <ul className={classes.list}>
              {series.dates.map((date) => (
                <DateLine key={date.seriesOn} date={date} onAsk={() => setDoing(date)} />
              ))}
            </ul>
          )}
        </section>
        {!series.hasEnded && <ChangeSeries series={series} />}
      </div>
      <Modal
        opened={doing !== null}
        onClose={close}
        size="lg"
        title={
          doing === 'end'
            ? 'End the series'
            : doing === null
              ? ''
              : isLeftOut(doing)
                ? `Bring back ${longDay(doing.seriesOn)}`
                : `Leave out ${longDay(doing.seriesOn)}`
        }
      >
        {doing === 'end' ? (
          <EndForm series={series} onDone={close} />
        ) : (
          doing !== null && <SkipForm seriesId={series.id} date={doing} onDone={close} />
        )}
      </Modal>
    </>
  );
}

const isLeftOut = ({ state }: SeriesDate) => state === 'skipped' || state === 'calledOff';

const stateWords: Record<SeriesDate['state'], string> = {
  planned: '',
  held: '',
  calledOff: 'Called off',
  skipped: 'Left out',
  shut: 'Shut',
  missing: 'Not laid out',
};

function DateLine({ date, onAsk }: { date: SeriesDate; onAsk: () => void }) {
  const {
    seriesOn,
    on,
    startsLocal,
    state,
    says,
    sessionId,
    seatsTaken = 0,
    byHand,
    conflicts = [],
  } = date;
  return (
    <li className={classes.closure}>
      <span>
        {sessionId == null || state !== 'held' ? (
          `${shortDay(on)} ${startsLocal}`
        ) : (
          <Go
            to="/studio/sessions/$sessionId"
            params={{ sessionId: String(sessionId) }}
            aria-label={`Change ${longDay(on)} ${startsLocal}`}
          >
            {shortDay(on)} {startsLocal}
          </Go>
        )}
      </span>
      <span>
        {state === 'held' && (seatsTaken === 0 ? 'Nobody booked' : `${seatsTaken} booked`)}
        {stateWords[state] !== '' && (
          <Needs tone={state === 'missing' ? 'stop' : 'mind'}>
            {stateWords[state]}
            {state === 'shut' && says != null && `: ${says}`}
          </Needs>
        )}
        {byHand && ` · changed by hand${on === seriesOn ? '' : ` from ${shortDay(seriesOn)}`}`}
        {state !== 'shut' && says != null && ` · ${says}`}
        {conflicts.map((words) => (
          <Text key={words} size="sm">
            {words}
          </Text>
        ))}
      </span>
      {state !== 'shut' && (
        <Button
          variant="default"
          size="xs"
          onClick={onAsk}
          aria-label={`${isLeftOut(date) ? 'Bring back' : 'Leave out'} ${longDay(seriesOn)}`}
        >
          {isLeftOut(date) ? 'Bring back' : 'Leave out'}
        </Button>
      )}
    </li>
  );
}

interface SkipProps {
  seriesId: number;
  date: SeriesDate;
  onDone: () => void;
}

function SkipForm({ seriesId, date, onDone }: SkipProps) {
  const skips = !isLeftOut(date);
  const skip = useSkipDate(seriesId);
  const look = useQuery({
    queryKey: [...seriesQueries.all(), 'skip', seriesId, date.seriesOn, skips] as const,
    queryFn: () => skip.mutateAsync({ dryRun: true, on: date.seriesOn, skips }),
    retry: false,
  });
  const keep = useSkipDate(seriesId);
  return (
    <Stack>
      <Asked query={look} waiting={<Lines count={2} />}>
        {({ changes }) => <Consequences changes={changes} />}
      </Asked>
      <Refused error={keep.error} />
      <Group>
        <Button
          loading={keep.isPending}
          disabled={look.data === undefined || isRefused(look.data.changes)}
          onClick={() =>
            keep.mutate(
              { dryRun: false, on: date.seriesOn, skips },
              {
                onSuccess: () => {
                  notifications.show({
                    message: skips
                      ? `${longDay(date.seriesOn)} is left out.`
                      : `${longDay(date.seriesOn)} is held again.`,
                  });
                  onDone();
                },
              },
            )
          }
        >
          {skips ? 'Leave it out' : 'Bring it back'}
        </Button>
        <Button variant="default" onClick={onDone}>
          Leave it
        </Button>
      </Group>
    </Stack>
  );
}

function EndForm({ series, onDone }: { series: Series; onDone: () => void }) {
  const { today } = useMe();
  const [lastOn, setLastOn] = useState<string | null>(null);
  const look = useEndSeries(series.id);
  const end = useEndSeries(series.id);
  return (
    <Stack>
      <DayInput
        label="Last day"
        description="Sessions after it are called off; what was held stays."
        value={lastOn}
        minDate={addDays(today, -1)}
        onChange={(day) => {
          setLastOn(day);
          look.reset();
          if (day !== null) look.mutate({ dryRun: true, lastOn: day });
        }}
      />
      <Refused error={look.error ?? end.error} />
      {look.data && <Consequences changes={look.data.changes} />}
      <Group>
        <Button
          loading={end.isPending}
          disabled={look.data === undefined || lastOn === null}
          onClick={() => {
            if (lastOn === null) return;
            end.mutate(
              { dryRun: false, lastOn },
              {
                onSuccess: ({ words }) => {
                  notifications.show({ message: `The series ends: ${words}.` });
                  onDone();
                },
              },
            );
          }}
        >
          End it
        </Button>
        <Button variant="default" onClick={onDone}>
          Leave it
        </Button>
      </Group>
    </Stack>
  );
}
