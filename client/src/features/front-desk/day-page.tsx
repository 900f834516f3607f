import { Button, Group, Text, Title } from '@mantine/core';
import { IconChevronLeft, IconChevronRight } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { sessionsQueries } from '@/api/sessions';
import { useMe } from '@/api/session';
import type { SessionSummary } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { addDays, longDay } from '@/components/time/days';
import { DaySession } from './day-session';
import { NobodyTeaches } from './nobody-teaches';
import { RosterPanel } from './roster-panel';
import classes from './desk.module.css';

const route = getRouteApi('/inside/desk');

/** A day by time; a session opens beside it. */
export function DayPage() {
  const { today } = useMe();
  const { day: asked, session } = route.useSearch();
  // Opened from a list that knows only the session: the day shown is the session's own.
  const opened = useQuery({
    ...sessionsQueries.roster(session ?? 0),
    enabled: session !== undefined && asked === undefined,
  });
  const day = asked ?? opened.data?.session.on ?? today;
  const navigate = route.useNavigate();
  const sessions = useQuery(sessionsQueries.between(day, day));
  const show = (next: string) =>
    void navigate({ search: { day: next === today ? undefined : next, session: undefined } });

  return (
    <div className={classes.day} data-open={session !== undefined || undefined}>
      <section className={classes.times} aria-labelledby="day">
        <Group justify="space-between" align="flex-end" mb="xs">
          <Title id="day">
            {day === today && 'Today, '}
            {longDay(day)}
          </Title>
          <Group gap="xs">
            <Button
              variant="default"
              px="xs"
              aria-label="The day before"
              onClick={() => show(addDays(day, -1))}
            >
              <IconChevronLeft size={20} aria-hidden />
            </Button>
            <Button variant="default" disabled={day === today} onClick={() => show(today)}>
              Today
            </Button>
            <Button
              variant="default"
              px="xs"
              aria-label="The day after"
              onClick={() => show(addDays(day, 1))}
            >
              <IconChevronRight size={20} aria-hidden />
            </Button>
            <DayInput
              aria-label="Another day"
              w="9rem"
              clearable={false}
              value={day}
              onChange={(next) => next !== null && show(next)}
            />
          </Group>
        </Group>
        <NobodyTeaches />
        <Asked query={sessions} waiting={<Lines count={6} height={84} />}>
          {(list) =>
            list.length === 0 ? (
              <Empty title="No sessions on this day">
                The days before and after are one step away.
              </Empty>
            ) : (
              <>
                <Totals sessions={list} />
                <ol className={classes.list}>
                  {inOrder(list).map((one) => (
                    <DaySession key={one.id} session={one} day={day} open={one.id === session} />
                  ))}
                </ol>
              </>
            )
          }
        </Asked>
      </section>
      {session !== undefined && <RosterPanel key={session} sessionId={session} today={today} />}
    </div>
  );
}

function Totals({ sessions }: { sessions: readonly SessionSummary[] }) {
  const sum = (of: (session: SessionSummary) => number) =>
    sessions.reduce((total, session) => total + of(session), 0);
  return (
    <Text c="dimmed" mb="sm">
      {sessions.length} sessions · {sum(({ seatsTaken }) => seatsTaken)} of{' '}
      {sum(({ seats }) => seats)} seats · {sum(({ waiting }) => waiting)} waiting
    </Text>
  );
}

const inOrder = (sessions: readonly SessionSummary[]) =>
  [...sessions].sort((a, b) => a.startsAt.localeCompare(b.startsAt));
