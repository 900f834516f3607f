import { useConnectionLost } from '@/api/connection';
import classes from './room.module.css';

interface Props {
  asOf: number;
  zone: string;
}

/** Says plainly that what is shown stands still; there while the connection is not. */
export function LostLine({ asOf, zone }: Props) {
  const lost = useConnectionLost();
  return (
    <p role="status" className={classes.lost} data-lost={lost || undefined}>
      {lost &&
        `No connection. This is the roster as of ${clockAt(asOf, zone)}; changes made elsewhere are not shown.`}
    </p>
  );
}

/** `09:58` by the location's clock. */
const clockAt = (moment: number, zone: string) =>
  new Intl.DateTimeFormat('en-GB', {
    hour: '2-digit',
    minute: '2-digit',
    timeZone: zone,
  }).format(moment);
