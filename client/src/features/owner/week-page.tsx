import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { timetableQuery } from '@/api/drafts';
import { useMe } from '@/api/session';
import type { TimetableConflict } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { addDays, dayAndMonth, mondayOf } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { MakeDraft } from './drafts/make-draft';
import { troublesOf } from './troubles';
import { WeekGrid } from './week-grid';
import classes from './drafts/board.module.css';

const route = getRouteApi('/inside/studio');

export function WeekPage() {
  const { today } = useMe();
  const { week } = route.useSearch();
  const navigate = route.useNavigate();
  const monday = mondayOf(week ?? today);
  const timetable = useQuery(timetableQuery(monday, addDays(monday, 6)));
  const locations = useQuery(catalogueQueries.locations());
  const [making, setMaking] = useState(false);
  const show = (next: string) =>
    void navigate({ search: { week: next === mondayOf(today) ? undefined : next } });

  return (
    <>
      <Group justify="space-between" align="flex-end" mb="xs">
        <Title>
          {dayAndMonth(monday)} to {dayAndMonth(addDays(monday, 6))}
        </Title>
        <Group gap="xs">
          <Button variant="default" onClick={() => show(addDays(monday, -7))}>
            Week before
          </Button>
          <Button
            variant="default"
            disabled={monday === mondayOf(today)}
            onClick={() => show(mondayOf(today))}
          >
            This week
          </Button>
          <Button variant="default" onClick={() => show(addDays(monday, 7))}>
            Week after
          </Button>
          <Button onClick={() => setMaking(true)}>Change in a draft</Button>
        </Group>
      </Group>
      <Asked query={timetable} waiting={<Lines count={4} height={120} />}>
        {({ sessions, conflicts }) => {
          const troubles = troublesOf(sessions, conflicts);
          return (
            <>
              <Group mb="xs" gap="md">
                <Text c="dimmed">
                  {sessions.length} sessions, {sum(sessions.map(({ seatsTaken }) => seatsTaken))} of{' '}
                  {sum(sessions.map(({ seats }) => seats))} seats
                </Text>
                {troubles.size > 0 && (
                  <Needs tone="stop">
                    {troubles.size === 1
                      ? '1 session needs you'
                      : `${troubles.size} sessions need you`}
                  </Needs>
                )}
              </Group>
              <Named conflicts={conflicts} />
              <Asked query={locations}>
                {(places) => (
                  <WeekGrid
                    monday={monday}
                    today={today}
                    sessions={sessions}
                    locations={places}
                    troubles={troubles}
                  />
                )}
              </Asked>
            </>
          );
        }}
      </Asked>
      {making && (
        <MakeDraft
          day={monday}
          onClose={() => setMaking(false)}
          onMade={(id) =>
            void navigate({ to: '/studio/drafts/$draftId', params: { draftId: String(id) } })
          }
        />
      )}
    </>
  );
}

/** Everything that stands against the week, in a sentence each. */
function Named({ conflicts }: { conflicts: readonly TimetableConflict[] }) {
  if (conflicts.length === 0) return null;
  return (
    <details open={conflicts.length <= 4} style={{ marginBottom: '0.75rem' }}>
      <summary>
        {conflicts.length === 1 ? '1 conflict' : `${conflicts.length} conflicts`}, by name
      </summary>
      <ul className={classes.against}>
        {conflicts.map(({ words, isHard }) => (
          <li key={words}>
            <Needs tone={isHard ? 'stop' : 'mind'}>{words}</Needs>
          </li>
        ))}
      </ul>
    </details>
  );
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);
