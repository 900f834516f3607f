import { Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { clientQueries } from '@/api/clients';
import { CancelButton } from '@/components/booking/booking';
import { Asked, Lines } from '@/components/states/asked';
import { shortDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { FitLine } from '@/components/booking/fit-line';
import classes from './card.module.css';

export function CardBookings({ clientId }: { clientId: number }) {
  const bookings = useQuery(clientQueries.bookings(clientId));
  return (
    <section aria-labelledby="next">
      <Title order={2} id="next">
        Her next classes
      </Title>
      <Asked query={bookings} waiting={<Lines count={2} />}>
        {(list) =>
          list.length === 0 ? (
            <Text c="dimmed" mt="xs">
              None booked.
            </Text>
          ) : (
            <ul className={classes.list}>
              {list.map(({ bookingId, status, place, session, fit }) => (
                <li key={bookingId} className={classes.booking}>
                  <div>
                    <Text fw={600}>
                      {shortDay(session.on)} <SessionTime session={session} from />
                    </Text>
                    <Text>
                      {session.className}
                      {status === 'waiting' &&
                        `, waiting${place == null ? '' : `, place ${place}`}`}
                    </Text>
                    {(fit.verdict === 'needsClearance' || fit.verdict === 'notSuitable') && (
                      <FitLine fit={fit} pressing />
                    )}
                  </div>
                  <CancelButton
                    bookingId={bookingId}
                    clientId={clientId}
                    session={session}
                    waiting={status === 'waiting'}
                  />
                </li>
              ))}
            </ul>
          )
        }
      </Asked>
    </section>
  );
}
