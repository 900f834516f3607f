import { Text, Title } from '@mantine/core';
import { useMe } from '@/api/session';
import { CalendarAddress } from '@/components/calendar/calendar-address';
import { Empty } from '@/components/states/asked';
import classes from './my.module.css';

/** Her classes in her own calendar. */
export function CalendarPage() {
  const { clientId, studioName } = useMe();
  if (clientId == null)
    return (
      <Empty title="This account has no client’s page">The front desk can join the two.</Empty>
    );
  return (
    <div className={classes.page}>
      <Title>In your calendar</Title>
      <Text my="md">
        The calendar on your phone or computer can show the classes you have booked, and follow when
        something changes. It needs an address of your own.
      </Text>
      <CalendarAddress reads="client" plain={`Class at ${studioName}`} />
    </div>
  );
}
