import { dayAndMonth, weekday } from '@/components/time/days';

interface HerSession {
  sessionId: number;
  on: string;
  startsLocal: string;
  className: string;
  locationName: string;
}

export const HerSessions = ({ sessions }: { sessions: readonly HerSession[] }) => (
  <ul>
    {sessions.map(({ sessionId, on, startsLocal, className, locationName }) => (
      <li key={sessionId}>
        {weekday(on)} {dayAndMonth(on)}, {startsLocal}: {className}, {locationName}
      </li>
    ))}
  </ul>
);
