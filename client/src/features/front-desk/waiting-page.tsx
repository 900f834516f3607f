import { Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { sessionsQueries } from '@/api/sessions';
import { useMe } from '@/api/session';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { addDays, longDay } from '@/components/time/days';
import { DaySession } from './day-session';
import classes from './desk.module.css';

const ahead = 28;

export function WaitingPage() {
  const { today } = useMe();
  const sessions = useQuery(sessionsQueries.between(today, addDays(today, ahead)));
  return (
    <div className={classes.narrow}>
      <Title>People waiting</Title>
      <Text c="dimmed" mb="lg">
        The next four weeks. A seat that frees goes to the first in line whom the session still
        suits.
      </Text>
      <Asked query={sessions} waiting={<Lines count={5} height={84} />}>
        {(list) => {
          const wanted = list.filter(({ waiting }) => waiting > 0);
          if (wanted.length === 0) return <Empty title="Nobody is waiting" />;
          const days = [...new Set(wanted.map(({ on }) => on))].sort();
          return days.map((day) => (
            <section key={day} aria-label={longDay(day)}>
              <Title order={2} mt="lg" mb="xs">
                {longDay(day)}
              </Title>
              <ol className={classes.list}>
                {wanted
                  .filter(({ on }) => on === day)
                  .map((session) => (
                    <DaySession key={session.id} session={session} day={day} open={false} />
                  ))}
              </ol>
            </section>
          ));
        }}
      </Asked>
    </div>
  );
}
