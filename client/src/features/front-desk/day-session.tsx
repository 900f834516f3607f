import { Group, Text } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import type { SessionSummary } from '@/api/types';
import { SessionTime } from '@/components/time/session-time';
import { Needs } from '@/components/verdict/mark';
import { Seats } from './seats';
import classes from './desk.module.css';

interface Props {
  session: SessionSummary;
  day: string;
  open: boolean;
}

export function DaySession({ session, day, open }: Props) {
  const toCheckIn = session.seatsTaken - session.checkedIn;
  return (
    <li className={classes.session} data-open={open || undefined}>
      <div className={classes.clock}>
        <strong>
          <SessionTime session={session} from />
        </strong>
        <span>to {session.endsLocal}</span>
      </div>
      <div>
        <Link
          to="/desk"
          search={{ day, session: session.id }}
          resetScroll={false}
          className={classes.open}
          aria-current={open ? 'true' : undefined}
        >
          {session.className}
        </Link>
        <Text size="sm" c="dimmed">
          {session.roomName}, {session.locationName}
          {session.instructorName != null && ` · ${session.instructorName}`}
        </Text>
        <Group gap="xs" mt={2}>
          {session.status === 'cancelled' && <Needs tone="stop">Cancelled</Needs>}
          {session.instructorName == null && <Needs tone="stop">No instructor</Needs>}
          {(session.unsuitable ?? 0) > 0 && (
            <Needs tone="mind">
              {session.unsuitable === 1
                ? '1 needs a person'
                : `${session.unsuitable} need a person`}
            </Needs>
          )}
        </Group>
      </div>
      <div className={classes.filled}>
        <Seats session={session} />
        <Text size="sm">
          {session.seatsTaken} of {session.seats}
          {session.waiting > 0 && `, ${session.waiting} waiting`}
        </Text>
        <Text size="sm" c="dimmed">
          {session.seatsTaken === 0
            ? 'nobody booked'
            : toCheckIn === 0
              ? 'all here'
              : `${toCheckIn} to check in`}
        </Text>
      </div>
    </li>
  );
}
