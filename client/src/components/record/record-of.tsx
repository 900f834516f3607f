import { Button, Group, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { letterFile } from '@/api/letters';
import { recordFile, recordQueries } from '@/api/records';
import { Asked, Lines } from '@/components/states/asked';
import { momentWords } from '@/components/time/zone';
import { RecordView } from './record-view';
import classes from './record.module.css';

/** All that is held about a client: to read, to print, and to take along as a file. */
export function RecordOf({ clientId }: { clientId: number }) {
  const record = useQuery(recordQueries.of(clientId));
  return (
    <>
      <Group my="md" className={classes.screen}>
        <Button component="a" href={recordFile(clientId)} download>
          Download as a file
        </Button>
        <Button
          variant="default"
          disabled={record.data === undefined}
          onClick={() => window.print()}
        >
          Print
        </Button>
      </Group>
      <Text size="sm" c="dimmed" className={classes.screen} maw="46rem">
        The file holds the same in a form that other programs can read (JSON). The files of letters
        are opened one by one, further down.
      </Text>
      <Asked query={record} waiting={<Lines count={8} height={56} />}>
        {(data) => (
          <>
            <Text mt="md">
              {data.name}, made on {momentWords(data.made)}.
            </Text>
            <RecordView record={data} fileOf={(letterId) => letterFile({ clientId, letterId })} />
          </>
        )}
      </Asked>
    </>
  );
}
