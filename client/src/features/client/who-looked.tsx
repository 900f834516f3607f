import { Button, Collapse, Text } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useInfiniteQuery } from '@tanstack/react-query';
import { auditQueries } from '@/api/audit';
import type { AuditEntry } from '@/api/types';
import { Lines, Refused } from '@/components/states/asked';
import { momentWords } from '@/components/time/zone';
import classes from './my.module.css';

/** Everybody who read or changed her health record, folded: there to be read, in nobody’s way. */
export function WhoLooked({ clientId }: { clientId: number }) {
  const [opened, { toggle }] = useDisclosure(false);
  return (
    <div>
      <Button
        variant="transparent"
        color="gray"
        px={0}
        aria-expanded={opened}
        aria-controls="who-looked"
        onClick={toggle}
      >
        Who looked at my record
      </Button>
      <Collapse expanded={opened} id="who-looked">
        {opened && <Trail clientId={clientId} />}
      </Collapse>
    </div>
  );
}

function Trail({ clientId }: { clientId: number }) {
  const trail = useInfiniteQuery(auditQueries.list(clientId));
  if (trail.data === undefined)
    return trail.isError ? (
      <Refused error={trail.error}>
        <Button size="xs" variant="default" onClick={() => void trail.refetch()}>
          Ask again
        </Button>
      </Refused>
    ) : (
      <Lines count={3} />
    );
  const entries = trail.data.pages.flat();
  if (entries.length === 0) return <Text c="dimmed">Nobody yet.</Text>;
  return (
    <>
      <Text size="sm" c="dimmed" mb="xs">
        Who, when and which part; newest first. What stood in it is not repeated here.
      </Text>
      <ul className={classes.list}>
        {entries.map((entry) => (
          <li key={entry.id} className={classes.reason}>
            <Text>
              <strong>{entry.seenAs === 'herself' ? 'You' : entry.who}</strong>
              {asWhat(entry)} {entry.act === 'read' ? 'read' : 'changed'}: {partOf(entry)}
            </Text>
            <Text size="sm" c="dimmed">
              {momentWords(entry.at)}
            </Text>
          </li>
        ))}
      </ul>
      {trail.hasNextPage && (
        <Button
          variant="default"
          mt="sm"
          loading={trail.isFetchingNextPage}
          onClick={() => void trail.fetchNextPage()}
        >
          Show earlier
        </Button>
      )}
      {trail.isFetchNextPageError && <Refused error={trail.error} />}
    </>
  );
}

const roles: Partial<Record<string, string>> = {
  owner: 'owner',
  reviewer: 'reads letters',
  instructor: 'instructor',
  frontDesk: 'front desk',
};

const asWhat = ({ seenAs }: AuditEntry) => {
  const role = roles[seenAs];
  return role === undefined ? '' : ` (${role})`;
};

const parts: Partial<Record<string, string>> = {
  card: 'your page',
  fit: 'how classes suit you',
  roster: 'a class list you are on',
  dates: 'your dates',
  factors: 'what changes a class for you',
  screening: 'the health questions',
  letter: 'your letters',
  'letter file': 'the file of a letter',
  hold: 'whether your bookings are paused',
  incident: 'warning signs in class',
  birth: 'the birth',
  ending: 'the end of the pregnancy',
  sharing: 'what your instructors may see by name',
  intake: 'your record as a new client',
  export: 'all that is held about you',
  erasure: 'the removal of what is held about you',
  trail: 'this list',
};

const partOf = ({ kind }: AuditEntry) => parts[kind] ?? kind;
