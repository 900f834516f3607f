import { Text, Title, type TitleOrder } from '@mantine/core';
import { useMe } from '@/api/session';
import type { SessionSummary } from '@/api/types';
import { longDay, nearDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';

interface Props {
  session: SessionSummary;
  order?: TitleOrder;
}

/** Which session: class, day and hour, place, how many people. */
export function SessionLine({ session, order = 3 }: Props) {
  const { today } = useMe();
  const near = nearDay(session.on, today);
  return (
    <>
      <Title order={order} size="h4">
        {session.className}
      </Title>
      <Text>
        {longDay(session.on)}
        {(near === 'today' || near === 'tomorrow') && ` (${near})`},{' '}
        <SessionTime session={session} />
      </Text>
      <Text size="sm" c="dimmed">
        {session.roomName}, {session.locationName} ·{' '}
        {session.seatsTaken === 1 ? '1 person' : `${session.seatsTaken} people`} booked
      </Text>
    </>
  );
}
