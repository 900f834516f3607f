import { Text, Title } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { RecordOf } from '@/components/record/record-of';
import { Go } from '@/components/states/go';

const route = getRouteApi('/inside/studio/people/$clientId/record');

/** All that is held about a client, made for her when she asks for it. */
export function RecordPage() {
  const { clientId } = route.useParams();
  return (
    <>
      <Title>All that is held about her</Title>
      <Text c="dimmed" maw="46rem">
        For a client who asks for it: the same page and file that she can open herself. Give it to
        nobody else. That you opened it is noted.
      </Text>
      <Go to="/studio/people/$clientId" params={{ clientId }}>
        Back to her page
      </Go>
      <RecordOf clientId={Number(clientId)} />
    </>
  );
}
