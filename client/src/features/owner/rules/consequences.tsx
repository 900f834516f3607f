import { Text } from '@mantine/core';
import type { ChangedBooking, Consequences } from '@/api/types';
import { Some } from '@/components/rules/some';
import { Go } from '@/components/states/go';
import { shortDay } from '@/components/time/days';
import { MovementShape } from '@/components/verdict/movement-shape';
import { VerdictMark } from '@/components/verdict/mark';
import { becomes, inBrief } from './in-brief';
import classes from './owner-rules.module.css';

/** Whose bookings ahead would suit them otherwise. */
export function ConsequencesList({ consequences }: { consequences: Consequences }) {
  const { bookings } = consequences;
  return (
    <section aria-label="Bookings it changes">
      <Text role="status" fw={600}>
        {inBrief(consequences)}
      </Text>
      <Some of="bookings" all={bookings} what="bookings" most={30}>
        {(some) => (
          <ul className={classes.list}>
            {some.map((booking) => (
              <OneBooking key={`${booking.clientId} ${booking.sessionId}`} booking={booking} />
            ))}
          </ul>
        )}
      </Some>
    </section>
  );
}

function OneBooking({ booking }: { booking: ChangedBooking }) {
  const { clientId, client, className, on, startsLocal, status, from, to, because, movements } =
    booking;
  return (
    <li className={classes.change}>
      <div>
        <Go to="/studio/people/$clientId" params={{ clientId: String(clientId) }}>
          {client}
        </Go>
        <Text size="sm">
          {className}, {shortDay(on)} {startsLocal.slice(0, 5)}
          {status === 'waiting' && ', waiting'}
        </Text>
      </div>
      <div className={classes.fromTo}>
        <VerdictMark verdict={from} />
        {from !== to && (
          <>
            <span>becomes</span>
            <VerdictMark verdict={to} pressing={to === 'notSuitable'} />
          </>
        )}
      </div>
      <div>
        {because != null && from !== to && <Text size="sm">{because}</Text>}
        {movements.map((movement) => (
          <Text key={`${movement.name}${movement.after}`} size="sm">
            <MovementShape verdict={movement.to} /> {becomes(movement)}
          </Text>
        ))}
      </div>
    </li>
  );
}
