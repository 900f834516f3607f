import { Anchor, Button, Group, List, Modal, Stack, Text, Textarea, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { clientQueries } from '@/api/clients';
import { useMe } from '@/api/session';
import type { ClientCard } from '@/api/types';
import { Asked, Empty, Lines, Refused } from '@/components/states/asked';
import { SafetyNote } from '@/components/states/safety-note';
import { telephone } from '@/components/states/telephone';
import { SignChoice } from '@/components/warning/sign-choice';
import { StopCard } from '@/components/warning/stop-card';
import { useRaise } from '@/components/warning/use-raise';
import classes from './my.module.css';

/** What to do now comes first, and does not wait for anything; then the studio is told, and holds her bookings. */
export function NotRightPage() {
  const { clientId } = useMe();
  const card = useQuery({ ...clientQueries.card(clientId ?? 0), enabled: clientId != null });
  return (
    <div className={classes.page}>
      <Stack gap="xl">
        <Title>Something is not right</Title>
        <DoNow her={card.data} />
        {clientId == null ? (
          <Empty title="This account has no client’s page">The front desk can join the two.</Empty>
        ) : (
          <Asked query={card} waiting={<Lines count={3} />}>
            {(her) => (her.phase === 'ended' ? null : <TellStudio her={her} />)}
          </Asked>
        )}
        <SafetyNote locationId={card.data?.homeLocationId} />
      </Stack>
    </div>
  );
}

function DoNow({ her }: { her?: ClientCard }) {
  const { data } = useQuery(catalogueQueries.locations());
  const place = data?.find(({ id }) => id === her?.homeLocationId) ?? data?.[0];
  return (
    <section className={classes.call} aria-labelledby="now">
      <Title order={2} id="now" mb="xs">
        First, now
      </Title>
      <List type="ordered" spacing="xs" size="lg">
        <List.Item>
          Stop what you are doing, and rest. Do not stay alone if you can help it.
        </List.Item>
        <List.Item>
          If it is bad, came suddenly or frightens you, call{' '}
          {place === undefined ? (
            'the local emergency number'
          ) : (
            <Anchor inherit fw={700} href={telephone(place.emergencyNumber)}>
              {place.emergencyNumber}
            </Anchor>
          )}{' '}
          at once.
        </List.Item>
        <List.Item>
          Otherwise ring your midwife, doctor or maternity unit today. They come before anything
          here.
        </List.Item>
        {her !== undefined && her.emergencyPhone !== '' && (
          <List.Item>
            The person you named for an emergency: {her.emergencyName}{' '}
            <Anchor inherit href={telephone(her.emergencyPhone)}>
              {her.emergencyPhone}
            </Anchor>
          </List.Item>
        )}
      </List>
    </section>
  );
}

function TellStudio({ her }: { her: ClientCard }) {
  const navigate = useNavigate();
  const { hold, raise, ...said } = useRaise(her.id);
  const [sure, setSure] = useState(false);
  if (hold.data)
    return (
      <StopCard
        card={hold.data}
        title="Your bookings rest now"
        onDone={() => void navigate({ to: '/my' })}
      />
    );
  const born = her.pregnancy?.bornOn != null;
  return (
    <section aria-labelledby="tell">
      <Title order={2} id="tell" mb="xs">
        Then tell the studio
      </Title>
      <Stack gap="md">
        <Text>
          {her.onHold
            ? 'Your bookings rest already. If there is something new, tell it here as well: the letter must be from after it.'
            : 'Your bookings then rest, at no charge, until a new letter from your midwife or doctor has been read. Nothing below has to be filled in.'}
        </Text>
        <SignChoice
          label="What is it? Tick what is so."
          inFull
          only={({ when }) => when === 'always' || (when === 'afterBirth') === born}
          value={said.signs}
          onChange={said.setSigns}
        />
        <Textarea
          label="In your own words, if you like"
          description="The owner of the studio reads this; the front desk does not."
          autosize
          minRows={2}
          maxLength={2000}
          value={said.happened}
          onChange={(event) => said.setHappened(event.currentTarget.value)}
        />
        <Group>
          <Button size="md" onClick={() => setSure(true)}>
            {her.onHold ? 'Tell the studio' : 'Hold my bookings'} …
          </Button>
        </Group>
      </Stack>
      <Modal
        opened={sure}
        onClose={() => setSure(false)}
        title={her.onHold ? 'Tell the studio?' : 'Hold your bookings?'}
      >
        <Text>
          {her.onHold
            ? 'A new entry is written, and only a letter from today or later ends the rest of your bookings.'
            : 'All your bookings rest from now on. Only a new letter from your midwife or doctor, written today or later, ends that.'}
        </Text>
        <Refused error={hold.error} />
        <Group mt="lg" gap="sm">
          <Button loading={hold.isPending} onClick={raise}>
            {her.onHold ? 'Yes, tell the studio' : 'Yes, hold my bookings'}
          </Button>
          <Button variant="default" disabled={hold.isPending} onClick={() => setSure(false)}>
            Go back
          </Button>
        </Group>
      </Modal>
    </section>
  );
}
