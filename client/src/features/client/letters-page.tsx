import { Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { clientQueries } from '@/api/clients';
import { letterQueries } from '@/api/letters';
import { useMe } from '@/api/session';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { LetterItem } from './letter-item';
import { SendLetter } from './send-letter';
import classes from './my.module.css';

export function LettersPage() {
  const { clientId } = useMe();
  if (clientId == null)
    return (
      <Empty title="This account has no client’s page">The front desk can join the two.</Empty>
    );
  return <HerLetters clientId={clientId} />;
}

function HerLetters({ clientId }: { clientId: number }) {
  const letters = useQuery(letterQueries.of(clientId));
  const { data: her } = useQuery(clientQueries.card(clientId));
  return (
    <Stack gap="xl" className={classes.page}>
      <div>
        <Title>My letters</Title>
        <Text mt="xs">
          A letter from your midwife or doctor says that you may take part, and what to leave out.
          It counts once somebody here has read it.
        </Text>
        <Go to="/my/letters/request">A page to print and take along</Go>
      </div>
      <SendLetter clientId={clientId} />
      <section aria-labelledby="letters">
        <Title order={2} id="letters" mb="xs">
          Letters so far
        </Title>
        <Asked query={letters} waiting={<Lines count={2} height={72} />}>
          {(list) =>
            list.length === 0 ? (
              <Text c="dimmed">None yet.</Text>
            ) : (
              <ul className={classes.list}>
                {list.map((letter) => (
                  <LetterItem key={letter.id} letter={letter} />
                ))}
              </ul>
            )
          }
        </Asked>
      </section>
      <SafetyNote locationId={her?.homeLocationId} />
    </Stack>
  );
}
