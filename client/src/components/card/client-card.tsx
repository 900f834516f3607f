import { Anchor, Group, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { clientQueries } from '@/api/clients';
import type { ClientCard } from '@/api/types';
import { LettersOf } from '@/components/letters/letters-of';
import { Asked, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { Tape } from '@/components/tape/tape';
import { ageWords } from '@/components/time/days';
import { CardActions } from './card-actions';
import { CardBookings } from './card-bookings';
import { CardChoices } from './card-choices';
import { Needed } from './needed';
import { Standing } from './standing';
import classes from './card.module.css';

interface Props {
  clientId: number;
  today: string;
  /** Where the card lies; pages about her lie below it. */
  at: '/desk/clients/$clientId' | '/studio/people/$clientId';
  /** Set where the reader sees all of her health: factors, loss. */
  health?: React.ReactNode;
}

/** Everything about one client that a desk acts on. */
export function ClientCardView({ clientId, today, at, health }: Props) {
  const card = useQuery(clientQueries.card(clientId));
  return (
    <Asked query={card} waiting={<Lines count={6} height={64} />}>
      {(her) => (
        <Stack gap="lg">
          <Head her={her} />
          <Needed her={her} />
          {her.tape != null && her.phase !== 'ended' && (
            <Tape
              tape={her.tape}
              name={`${her.called}’s time`}
              age={ageWords(her.pregnancy)}
              nextStage={her.pregnancy?.nextStage}
            />
          )}
          <div className={classes.columns}>
            <div>{her.phase === 'ended' ? health : <CardChoices clientId={clientId} />}</div>
            <Stack gap="xl">
              <CardBookings clientId={clientId} />
              <Standing her={her} />
              <LettersOf
                clientId={clientId}
                request={
                  <Go to={`${at}/letters/request`} params={{ clientId: String(clientId) }}>
                    Letter to her clinician
                  </Go>
                }
              />
              {her.phase !== 'ended' && health}
              <CardActions her={her} today={today} />
            </Stack>
          </div>
          <SafetyNote locationId={her.homeLocationId} />
        </Stack>
      )}
    </Asked>
  );
}

function Head({ her }: { her: ClientCard }) {
  const now = her.pregnancy;
  return (
    <div>
      <Title>
        {her.called}
        {her.called !== her.name && (
          <Text component="span" c="dimmed" fz="lg" fw={400}>
            {'  '}
            {her.name}
          </Text>
        )}
      </Title>
      <Group gap="xs" mt={4}>
        {now?.stageName != null && <Text fw={600}>{now.stageName}</Text>}
        {now?.babies != null && now.babies > 1 && (
          <Text>{now.babies === 2 ? 'twins' : `${now.babies} babies`}</Text>
        )}
      </Group>
      <Group gap="lg" mt={4}>
        {her.phone !== '' && <Anchor href={`tel:${her.phone}`}>{her.phone}</Anchor>}
        {her.email !== '' && <Anchor href={`mailto:${her.email}`}>{her.email}</Anchor>}
        {her.emergencyName !== '' && (
          <Text>
            In an emergency: {her.emergencyName}
            {her.emergencyPhone !== '' && (
              <>
                {' '}
                <Anchor href={`tel:${her.emergencyPhone}`}>{her.emergencyPhone}</Anchor>
              </>
            )}
          </Text>
        )}
      </Group>
    </div>
  );
}
