import { Select, Text } from '@mantine/core';
import type { UseQueryResult } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import type { SessionPlan, SessionSummary } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { shortDay } from '@/components/time/days';
import { useHere } from './here';

interface Props {
  sessions: UseQueryResult<SessionSummary[]>;
  ofSession?: SessionPlan;
  against?: number;
  classId: number;
}

/** For whom the draft is looked at: one session's people at a time. */
export function CheckedAgainst({ sessions, ofSession, against, classId }: Props) {
  const { plan } = useHere();
  const navigate = useNavigate();
  return (
    <Asked query={sessions} waiting={<Lines count={1} />}>
      {(list) => {
        const options = list.map(({ id, on, startsLocal, seatsTaken, instructorName }) => ({
          value: String(id),
          label: `${shortDay(on)} ${startsLocal}, ${instructorName ?? 'nobody yet'}, ${seatsTaken} booked`,
        }));
        if (ofSession !== undefined && !list.some(({ id }) => id === ofSession.sessionId))
          options.unshift({
            value: String(ofSession.sessionId),
            label: `${shortDay(ofSession.on)} ${ofSession.startsLocal}`,
          });
        return options.length === 0 ? (
          <Text c="dimmed">
            No session of this class is ahead for you, so there is nobody to check the plan against.
          </Text>
        ) : (
          <Select
            label="Checked against"
            data={options}
            value={against === undefined ? null : String(against)}
            allowDeselect={false}
            onChange={(id) =>
              void navigate({
                to: plan,
                params: { classId: String(classId) },
                search: { session: Number(id) },
                replace: true,
                resetScroll: false,
              })
            }
          />
        );
      }}
    </Asked>
  );
}
