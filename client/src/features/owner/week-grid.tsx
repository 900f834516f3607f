import { Link } from '@tanstack/react-router';
import type { Location, SessionSummary } from '@/api/types';
import { addDays, shortDay } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { unsuitableWords } from '@/components/verdict/words';
import classes from './owner.module.css';

interface Props {
  monday: string;
  today: string;
  sessions: readonly SessionSummary[];
  locations: readonly Location[];
  troubles: ReadonlyMap<number, string[]>;
}

/** Days across, rooms down; on a narrow screen the table is pushed sideways. */
export function WeekGrid({ monday, today, sessions, locations, troubles }: Props) {
  const days = Array.from({ length: 7 }, (_, day) => addDays(monday, day));
  const rooms = locations.flatMap(({ name, rooms: inside }) =>
    inside.map((room) => ({ ...room, location: name })),
  );
  return (
    <div role="region" className={classes.scroll} tabIndex={0} aria-label="The week by room">
      <table className={classes.week}>
        <thead>
          <tr>
            <td />
            {days.map((day) => (
              <th key={day} scope="col" data-today={day === today || undefined}>
                {shortDay(day)}
                {day === today && <span> today</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rooms.map((room) => (
            <tr key={room.id}>
              <th scope="row">
                {room.name}
                <span>{room.location}</span>
                <span>{room.seats} seats</span>
              </th>
              {days.map((day) => (
                <td key={day} data-today={day === today || undefined}>
                  {sessions
                    .filter(({ roomId, on }) => roomId === room.id && on === day)
                    .sort((a, b) => a.startsAt.localeCompare(b.startsAt))
                    .map((session) => (
                      <Slot
                        key={session.id}
                        session={session}
                        troubles={troubles.get(session.id)}
                      />
                    ))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Slot({ session, troubles = [] }: { session: SessionSummary; troubles?: string[] }) {
  return (
    <Link
      to="/studio/sessions/$sessionId"
      params={{ sessionId: String(session.id) }}
      className={classes.slot}
      data-trouble={troubles.length > 0 || undefined}
      data-off={session.status === 'cancelled' || undefined}
    >
      <span className={classes.slotTime}>
        {session.startsLocal}
        <span className={classes.slotSeats}>
          {session.seatsTaken}/{session.seats}
        </span>
      </span>
      <span className={classes.slotClass}>{session.className}</span>
      {session.instructorName != null && (
        <span className={classes.slotWho}>{session.instructorName}</span>
      )}
      {session.status === 'cancelled' && <Needs tone="mind">Cancelled</Needs>}
      {troubles.map((trouble) => (
        <Needs key={trouble} tone="stop">
          {trouble}
        </Needs>
      ))}
      {(session.unsuitable ?? 0) > 0 && (
        <Needs tone="mind">{unsuitableWords(session.unsuitable ?? 0)}</Needs>
      )}
    </Link>
  );
}
