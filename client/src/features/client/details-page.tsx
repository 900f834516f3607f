import { Button, Modal, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { clientQueries } from '@/api/clients';
import { useMe } from '@/api/session';
import type { ClientCard } from '@/api/types';
import { DatingHistory } from '@/components/card/dating-history';
import { LossForm } from '@/components/card/loss-form';
import { BirthCorrection } from '@/components/forms/birth-correction';
import { BirthForm } from '@/components/forms/birth-form';
import { releasedWords } from '@/components/forms/birth-modes';
import { DetailsForm } from '@/components/forms/details-form';
import { FactorsForm } from '@/components/forms/factors-form';
import { ReviseDating } from '@/components/forms/revise-dating';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { NotesAbout } from '@/components/notes/notes-about';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { tell } from '@/components/states/told';
import { fullDate } from '@/components/time/days';
import { WhoLooked } from './who-looked';
import classes from './my.module.css';

export function DetailsPage() {
  const { clientId, today } = useMe();
  if (clientId == null)
    return (
      <Empty title="This account has no client’s page">The front desk can join the two.</Empty>
    );
  return <Details clientId={clientId} today={today} />;
}

function Details({ clientId, today }: { clientId: number; today: string }) {
  const card = useQuery(clientQueries.card(clientId));
  return (
    <div className={classes.page}>
      <Asked query={card} waiting={<Lines count={6} height={64} />}>
        {(her) => (
          <>
            <Title mb="md">About me</Title>
            <section className={classes.section} aria-label="How to reach me">
              <DetailsForm her={her} herself />
            </section>
            {her.phase !== 'ended' && <MyHealth her={her} today={today} />}
            <section className={classes.section} aria-label="What your instructors noted">
              <NotesAbout clientId={her.id} says="What your instructors noted" />
            </section>
            <section className={classes.section} aria-label="Who looked at my record">
              <WhoLooked clientId={her.id} />
            </section>
            <section className={classes.section} aria-label="In your calendar">
              <Go to="/my/calendar">In your calendar</Go>
              <Text c="dimmed">The private address your calendar reads your classes from.</Text>
            </section>
            <section className={classes.section} aria-label="What is held about you">
              <Go to="/my/record">What is held about you</Go>
              <Text c="dimmed">To read, print or download, and to have it erased.</Text>
            </section>
            <SafetyNote locationId={her.homeLocationId} />
          </>
        )}
      </Asked>
    </div>
  );
}

type Doing = 'dating' | 'birth' | 'correction' | 'loss';

const quiet = {
  variant: 'transparent',
  px: 0,
  color: 'gray',
  className: classes.quietLink,
} as const;

function MyHealth({ her, today }: { her: ClientCard; today: string }) {
  const [doing, setDoing] = useState<Doing | null>(null);
  const [title, setTitle] = useState('');
  const start = (what: Doing, words: string) => () => {
    setTitle(words);
    setDoing(what);
  };
  const given = { clientId: her.id, today, onDone: () => setDoing(null) };
  const { pregnancy } = her;
  const ending = her.phase === 'born' ? 'We have lost our baby' : 'My pregnancy has ended';
  return (
    <>
      <section className={classes.section} aria-labelledby="dates">
        <Title order={2} id="dates">
          My dates
        </Title>
        <Text my="xs">
          {pregnancy?.bornOn != null
            ? `Birth on ${fullDate(pregnancy.bornOn)}.`
            : pregnancy?.dueDate != null
              ? `Due ${fullDate(pregnancy.dueDate)}.`
              : 'No date yet.'}
        </Text>
        {her.phase !== 'born' && (
          <Stack gap="xs" align="flex-start">
            <Button variant="default" onClick={start('dating', 'Add to my dates')}>
              Add a scan or another date
            </Button>
            {pregnancy?.birthReportable === true && pregnancy.mayHaveGivenBirth && (
              <Button variant="default" onClick={start('birth', 'The birth')}>
                I have given birth
              </Button>
            )}
          </Stack>
        )}
        {her.phase === 'born' && (
          <Button variant="default" onClick={start('correction', 'The birth')}>
            Correct the birth
          </Button>
        )}
        <DatingHistory clientId={her.id} />
      </section>
      <section className={classes.section} aria-labelledby="factors">
        <Title order={2} id="factors">
          What changes a class for me
        </Title>
        <Text c="dimmed" mb="md">
          Your instructors see what to do differently, not why, unless you chose to share it.
        </Text>
        <FactorsForm clientId={her.id} factors={her.factors ?? []} today={today} />
      </section>
      {(her.phase === 'pregnant' || her.phase === 'born') && (
        <section className={classes.section} aria-label="If things have changed">
          <Stack gap={0} align="flex-start">
            {pregnancy?.birthReportable === true && !pregnancy.mayHaveGivenBirth && (
              <Button {...quiet} onClick={start('birth', 'The birth')}>
                I have given birth
              </Button>
            )}
            <Button {...quiet} onClick={start('loss', ending)}>
              {ending}
            </Button>
          </Stack>
        </section>
      )}
      <Modal opened={doing !== null} onClose={given.onDone} title={title}>
        {doing === 'dating' && <ReviseDating {...given} />}
        {doing === 'birth' && (
          <BirthForm
            {...given}
            onDone={(released) => {
              tell(
                released.preterm
                  ? 'Thank you for telling us. Somebody from the studio will ring you; you need not do anything.'
                  : releasedWords(released),
              );
              given.onDone();
            }}
          />
        )}
        {doing === 'correction' && <BirthCorrection her={her} {...given} />}
        {doing === 'loss' && <LossForm {...given} herself />}
      </Modal>
    </>
  );
}
