import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { catalogueQueries } from '@/api/catalogue';
import { sessionsQueries } from '@/api/sessions';
import { useMe } from '@/api/session';
import { Asked, Lines } from '@/components/states/asked';
import { addDays, dayAndMonth, mondayOf } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { troublesOf } from './troubles';
import { WeekGrid } from './week-grid';

const route = getRouteApi('/inside/studio');

export function WeekPage() {
  const { today } = useMe();
  const { week } = route.useSearch();
  const navigate = route.useNavigate();
  const monday = mondayOf(week ?? today);
  const sessions = useQuery(sessionsQueries.between(monday, addDays(monday, 6)));
  const locations = useQuery(catalogueQueries.locations());
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
        </Group>
      </Group>
      <Asked query={sessions} waiting={<Lines count={4} height={120} />}>
        {(list) => {
          const troubles = troublesOf(list);
          return (
            <>
              <Group mb="md" gap="md">
                <Text c="dimmed">
                  {list.length} sessions, {sum(list.map(({ seatsTaken }) => seatsTaken))} of{' '}
                  {sum(list.map(({ seats }) => seats))} seats
                </Text>
                {troubles.size > 0 && (
                  <Needs tone="stop">
                    {troubles.size === 1
                      ? '1 session needs you'
                      : `${troubles.size} sessions need you`}
                  </Needs>
                )}
              </Group>
              <Asked query={locations}>
                {(places) => (
                  <WeekGrid
                    monday={monday}
                    today={today}
                    sessions={list}
                    locations={places}
                    troubles={troubles}
                  />
                )}
              </Asked>
            </>
          );
        }}
      </Asked>
    </>
  );
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);
