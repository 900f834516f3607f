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

const kinds: Record<string, string> = {
  lastPeriod: 'Last period from',
  scan: 'Scan on',
  transfer: 'Transfer on',
  stated: 'Stated due date',
};

/** Every due date she has had here and why it became that, newest first, and what they rest on. */
export function DatingHistory({ clientId }: { clientId: number }) {
  const datings = useQuery(clientQueries.datings(clientId));
  return (
    <section aria-label="Due dates so far">
      <Title order={3} mt="xl" mb="sm">
        Due dates so far
      </Title>
      <Asked query={datings} waiting={<Lines count={2} />}>
        {({ revisions, evidence }) =>
          revisions.length === 0 ? (
            <Text c="dimmed">None yet.</Text>
          ) : (
            <>
              <Timeline active={0} bulletSize={16} lineWidth={2}>
                {revisions.map(({ dueDate, basis, explanation, enteredAt, enteredBy }) => (
                  <Timeline.Item key={enteredAt} title={`${fullDate(dueDate)}, ${bases[basis]}`}>
                    <Text size="sm">{explanation}</Text>
                    <Text size="sm" c="dimmed">
                      Entered {momentWords(enteredAt)}
                      {enteredBy != null && ` by ${enteredBy}`}
                    </Text>
                  </Timeline.Item>
                ))}
              </Timeline>
              <Text size="sm" mt="md">
                Resting on:{' '}
                {evidence
                  .map(
                    ({ kind, day, detail }) =>
                      `${kinds[kind] ?? kind} ${fullDate(day)}${detail == null ? '' : ` (${detail})`}`,
                  )
                  .join('; ')}
                .
              </Text>
            </>
          )
        }
      </Asked>
    </section>
  );
}
