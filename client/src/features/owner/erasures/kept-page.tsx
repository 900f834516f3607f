import { Alert, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { erasureQueries, keptFile } from '@/api/records';
import { RecordView } from '@/components/record/record-view';
import { Asked, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';

const route = getRouteApi('/inside/studio/erasures/$erasureId');

/** What is set apart of somebody erased, for the one who may have to answer for it. */
export function KeptPage() {
  const erasureId = Number(route.useParams().erasureId);
  const kept = useQuery(erasureQueries.kept(erasureId));
  return (
    <>
      <Title>Set apart: erasure {erasureId}</Title>
      <Go to="/studio/erasures">Back to erasures</Go>
      <Alert color="pine" variant="light" my="md" maw="46rem">
        <Text>
          Kept because it has to be, for nothing else. Nobody but you can read it, and that you
          opened it is noted.
        </Text>
      </Alert>
      <Asked query={kept} waiting={<Lines count={8} />}>
        {(parts) =>
          parts.map((part) => (
            <article key={part.name} aria-label={part.name}>
              <Text fw={700} size="lg" mt="xl">
                {part.name}
              </Text>
              <RecordView record={part} fileOf={(letterId) => keptFile(erasureId, letterId)} />
            </article>
          ))
        }
      </Asked>
    </>
  );
}
