import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { letterQueries } from '@/api/letters';
import { useMe } from '@/api/session';
import { Asked, Lines } from '@/components/states/asked';
import { SafetyNote } from '@/components/states/safety-note';
import { RequestSheet } from './request-sheet';
import classes from './request.module.css';

/** What her clinician is asked, to be printed: hers on her own page, the chosen client's at a desk. */
export function RequestLetterPage() {
  const me = useMe();
  const { clientId } = useParams({ strict: false });
  const letter = useQuery(letterQueries.request(Number(clientId ?? me.clientId)));
  const whose = clientId === undefined ? 'your' : 'her';
  return (
    <>
      <div className={classes.screen}>
        <Title>Letter to {whose} clinician</Title>
        <Text c="dimmed" maw="46rem">
          One page for {whose} midwife or doctor to fill in and sign. Signed, it comes back as a
          scan, a photo or on paper, and counts once it was read.
        </Text>
        <Group my="md">
          <Button disabled={letter.data === undefined} onClick={() => window.print()}>
            Print
          </Button>
        </Group>
      </div>
      <Asked query={letter} waiting={<Lines count={6} height={56} />}>
        {(data) => <RequestSheet letter={data} />}
      </Asked>
      <div className={classes.screen}>
        <SafetyNote />
      </div>
    </>
  );
}
