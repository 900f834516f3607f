import { Text, Title } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import type { SessionSummary } from '@/api/types';
import { longDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { Needs } from '@/components/verdict/mark';
import { unsuitableWords } from '@/components/verdict/words';
import classes from './teach.module.css';

interface Props {
  id: string;
  title: string;
  sessions: readonly SessionSummary[];
  today: string;
}

/** Sessions under their days. */
export function SessionList({ id, title, sessions, today }: Props) {
  const days = [...new Set(sessions.map(({ on }) => on))].sort();
  return (
    <>
      <Title order={2} id={id} mb="sm">
        {title}
      </Title>
      {days.length === 0 && <Text c="dimmed">Nothing.</Text>}
      {days.map((day) => (
        <section key={day} aria-label={longDay(day)}>
          <Title order={3} mt="md" mb={4}>
            {day === today ? 'Today' : longDay(day)}
          </Title>
          <ul className={classes.list}>
            {sessions
              .filter(({ on }) => on === day)
              .map((session) => (
                <li key={session.id} className={classes.session}>
                  <strong>
                    <SessionTime session={session} from />
                  </strong>
                  <div>
                    <Link
                      to="/teach/sessions/$sessionId"
                      params={{ sessionId: String(session.id) }}
                    >
                      {session.className}
                    </Link>
                    <Text size="sm" c="dimmed">
                      {session.roomName}, {session.locationName}
                    </Text>
                    {session.status === 'cancelled' && <Needs tone="stop">Cancelled</Needs>}
                    {(session.unsuitable ?? 0) > 0 && (
                      <Needs tone="mind">{unsuitableWords(session.unsuitable ?? 0)}</Needs>
                    )}
                  </div>
                  <Text>
                    {session.seatsTaken} of {session.seats}
                  </Text>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}
