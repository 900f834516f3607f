import { Text, Title } from '@mantine/core';
import { useMe } from '@/api/session';
import { CalendarAddress } from '@/components/calendar/calendar-address';
import { Empty } from '@/components/states/asked';
import classes from './teach.module.css';

/** What she teaches in her own calendar. */
export function CalendarPage() {
  const { instructorId, studioName } = useMe();
  if (instructorId == null)
    return <Empty title="This account teaches nothing">The owner can join the two.</Empty>;
  return (
    <div className={classes.weeks}>
      <Title>In your calendar</Title>
      <Text my="md" maw="46rem">
        The calendar on your phone or computer can show the classes you teach, with how many people
        have booked and never who, and follow when something changes. It needs an address of your
        own.
      </Text>
      <CalendarAddress reads="instructor" plain={`Class at ${studioName}`} />
    </div>
  );
}
