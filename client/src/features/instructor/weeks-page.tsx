import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { sessionsQueries } from '@/api/sessions';
import { useMe } from '@/api/session';
import { Asked, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { addDays, dayAndMonth, mondayOf } from '@/components/time/days';
import { SessionList } from './session-list';
import classes from './teach.module.css';

const route = getRouteApi('/inside/teach/week');

export function WeeksPage() {
  const { today } = useMe();
  const { from = mondayOf(today) } = route.useSearch();
  const navigate = route.useNavigate();
  const to = addDays(from, 6);
  const sessions = useQuery(sessionsQueries.mine(from, to));
  const show = (monday: string) => void navigate({ search: { from: monday } });
  return (
    <div className={classes.weeks}>
      <Title>My weeks</Title>
      <Text mb="sm">
        <Go to="/teach/calendar">Put them in your calendar</Go>
      </Text>
      <Group gap="xs" mb="lg">
        <Button variant="default" onClick={() => show(addDays(from, -7))}>
          Earlier
        </Button>
        <Button
          variant="default"
          disabled={from === mondayOf(today)}
          onClick={() => show(mondayOf(today))}
        >
          This week
        </Button>
        <Button variant="default" onClick={() => show(addDays(from, 7))}>
          Later
        </Button>
      </Group>
      <Asked query={sessions} waiting={<Lines count={5} height={64} />}>
        {(list) => (
          <SessionList
            id="week"
            title={`${dayAndMonth(from)} to ${dayAndMonth(to)}`}
            sessions={[...list].sort((a, b) => a.startsAt.localeCompare(b.startsAt))}
            today={today}
          />
        )}
      </Asked>
    </div>
  );
}
