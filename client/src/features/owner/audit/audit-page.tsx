import { Button, Group, Text, Title } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { auditQueries } from '@/api/audit';
import { Empty, Lines, Refused } from '@/components/states/asked';
import { AuditTable } from './audit-table';
import { TrailCheck } from './trail-check';
import { WhoseRecord } from './whose-record';

const route = getRouteApi('/inside/studio/audit');

/** Every read and change of a health record, the newest first. */
export function AuditPage() {
  const { client } = route.useSearch();
  const navigate = route.useNavigate();
  const trail = useInfiniteQuery(auditQueries.list(client));
  const entries = trail.data?.pages.flat();
  return (
    <>
      <Title>Audit</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        Who read or changed whose health record, and when; never what stands in it. Entries are only
        ever added.
      </Text>
      <TrailCheck />
      <WhoseRecord
        client={client}
        name={entries?.find(({ clientId }) => clientId === client)?.whose ?? undefined}
        onChange={(chosen) => void navigate({ search: { client: chosen } })}
      />
      {trail.isError && entries === undefined ? (
        <Refused error={trail.error}>
          <Button size="xs" variant="default" onClick={() => void trail.refetch()}>
            Ask again
          </Button>
        </Refused>
      ) : entries === undefined ? (
        <Lines count={8} />
      ) : entries.length === 0 ? (
        <Empty title="Nothing has been noted yet">
          Every card, roster or letter that is opened is noted here.
        </Empty>
      ) : (
        <>
          <AuditTable entries={entries} />
          {trail.isError && <Refused error={trail.error} />}
          <Group mt="md">
            {trail.hasNextPage ? (
              <Button
                variant="default"
                loading={trail.isFetchingNextPage}
                onClick={() => void trail.fetchNextPage()}
              >
                Show earlier ones
              </Button>
            ) : (
              <Text c="dimmed">These are all.</Text>
            )}
          </Group>
        </>
      )}
    </>
  );
}
