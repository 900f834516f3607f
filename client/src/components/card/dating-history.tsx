import { Text, Timeline, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { clientQueries } from '@/api/clients';
import type { Basis } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { fullDate } from '@/components/time/days';
import { momentWords } from '@/components/time/zone';

const bases: Record<Basis, string> = {
  lastPeriod: 'from the last period',
  scan: 'from a scan',
  transfer: 'from the embryo transfer',
  stated: 'stated by a clinician',
};

/** Every due date she has had here and why it became that, newest first. */
export function DatingHistory({ clientId }: { clientId: number }) {
  const datings = useQuery(clientQueries.datings(clientId));
  return (
    <section aria-label="Due dates so far">
      <Title order={3} mt="xl" mb="sm">
        Due dates so far
      </Title>
      <Asked query={datings} waiting={<Lines count={2} />}>
        {(list) =>
          list.length === 0 ? (
            <Text c="dimmed">None yet.</Text>
          ) : (
            <Timeline active={0} bulletSize={16} lineWidth={2}>
              {list.map(({ dueDate, basis, explanation, enteredAt, enteredBy }) => (
                <Timeline.Item key={enteredAt} title={`${fullDate(dueDate)}, ${bases[basis]}`}>
                  <Text size="sm">{explanation}</Text>
                  <Text size="sm" c="dimmed">
                    Entered {momentWords(enteredAt)} by {enteredBy}
                  </Text>
                </Timeline.Item>
              ))}
            </Timeline>
          )
        }
      </Asked>
    </section>
  );
}
