import { Button, Group, Text, Title } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { IconPrinter } from '@tabler/icons-react';
import { incidentQueries } from '@/api/incidents';
import { Empty, Lines, Refused } from '@/components/states/asked';
import { SafetyNote } from '@/components/states/safety-note';
import { Filters } from './filters';
import { IncidentEntry } from './incident-entry';
import classes from './incidents.module.css';

const route = getRouteApi('/inside/studio/incidents');

/** What happened at the door, in class or at home, the newest first. */
export function IncidentsPage() {
  const filter = route.useSearch();
  const navigate = route.useNavigate();
  const record = useInfiniteQuery(incidentQueries.list(filter));
  const entries = record.data?.pages.flat();
  const { client, session, on, find } = filter;
  const filtered = [client, session, on, find].some((value) => value !== undefined);
  return (
    <div className={classes.page}>
      <Group justify="space-between" align="flex-start">
        <Title>Incidents</Title>
        <Button
          className={classes.screen}
          variant="default"
          leftSection={<IconPrinter size={18} aria-hidden />}
          onClick={() => window.print()}
        >
          Print
        </Button>
      </Group>
      <Text c="dimmed" mb="lg">
        Warning signs that were raised, and what was done. Entries are only ever added; each look at
        them is noted in her record.
      </Text>
      <div className={classes.screen}>
        <Filters
          filter={filter}
          entries={entries ?? []}
          onChange={(search) => void navigate({ search, replace: true })}
        />
      </div>
      {record.isError && entries === undefined ? (
        <Refused error={record.error}>
          <Button size="xs" variant="default" onClick={() => void record.refetch()}>
            Ask again
          </Button>
        </Refused>
      ) : entries === undefined ? (
        <Lines count={4} height={120} />
      ) : entries.length === 0 ? (
        filtered ? (
          <Empty title="No entry for what you search">Take something out of the search.</Empty>
        ) : (
          <Empty title="Nothing has happened">
            A warning sign raised at the desk, in class or by a client herself is written down here.
          </Empty>
        )
      ) : (
        <>
          <ol className={classes.list} aria-label="Entries, the newest first">
            {entries.map((entry) => (
              <IncidentEntry key={entry.id} entry={entry} />
            ))}
          </ol>
          {record.isError && <Refused error={record.error} />}
          <Group mt="md" className={classes.screen}>
            {record.hasNextPage ? (
              <Button
                variant="default"
                loading={record.isFetchingNextPage}
                onClick={() => void record.fetchNextPage()}
              >
                Show earlier ones
              </Button>
            ) : (
              <Text c="dimmed">These are all.</Text>
            )}
          </Group>
        </>
      )}
      <SafetyNote />
    </div>
  );
}
