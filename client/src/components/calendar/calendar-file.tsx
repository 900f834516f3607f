import { Anchor } from '@mantine/core';
import { IconCalendarDown } from '@tabler/icons-react';
import { sessionCalendar } from '@/api/feeds';
import classes from './calendar.module.css';

interface Props {
  sessionId: number;
  /** What it is, for those who hear the link without seeing what it stands beside. */
  of: string;
  /** A client's file names the class. */
  named?: boolean;
}

/** One class as a file for the calendar. */
export function CalendarFile({ sessionId, of, named = false }: Props) {
  return (
    <Anchor
      href={sessionCalendar(sessionId, named)}
      download
      size="sm"
      className={classes.file}
      aria-label={`Calendar file: ${of}`}
    >
      <IconCalendarDown size={18} stroke={1.75} aria-hidden />
      Calendar file
    </Anchor>
  );
}
