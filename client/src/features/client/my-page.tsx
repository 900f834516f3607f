import { Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { clientQueries } from '@/api/clients';
import { useMe } from '@/api/session';
import type { ClientCard, Released } from '@/api/types';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { GoButton } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { Tape } from '@/components/tape/tape';
import { ageWords, sinceBirth } from '@/components/time/days';
import { AnythingChanged } from './anything-changed';
import { EffortLine } from './effort-line';
import { MyBookings } from './my-bookings';
import { MyChoices } from './my-choices';
import { MyMoves } from './my-moves';
import { NeededFirst } from './needed-first';
import { AfterTelling, SomethingChanged } from './something-changed';
import classes from './my.module.css';

export function MyPage() {
  const { clientId, today } = useMe();
  if (clientId == null)
    return (
      <Empty title="This account has no client’s page">The front desk can join the two.</Empty>
    );
  return <HerPage clientId={clientId} today={today} />;
}

function HerPage({ clientId, today }: { clientId: number; today: string }) {
  const card = useQuery(clientQueries.card(clientId));
  const [told, setTold] = useState<Released | null>(null);
  return (
    <div className={classes.page}>
      <Asked query={card} waiting={<Lines count={5} height={96} />}>
        {(her) =>
          her.phase === 'ended' ? (
            <Quiet her={her} />
          ) : (
            <Stack gap="xl">
              <div>
                <Title>{her.called}</Title>
                <Text c="dimmed">{whereSheIs(her)}</Text>
                <GoButton to="/my/not-right" variant="default" color="brick" mt="sm">
                  Something is not right
                </GoButton>
              </div>
              {told !== null && her.phase === 'born' && <AfterTelling released={told} />}
              <NeededFirst her={her} today={today} onBirth={setTold} />
              <AnythingChanged clientId={clientId} />
              {her.tape != null && (
                <Tape
                  tape={her.tape}
                  name="Your time"
                  age={ageWords(her.pregnancy)}
                  nextStage={her.pregnancy?.nextStage}
                />
              )}
              <MyMoves clientId={clientId} />
              <MyBookings clientId={clientId} today={today} />
              <MyChoices clientId={clientId} />
              <EffortLine her={her} />
              <SomethingChanged her={her} today={today} onBirth={setTold} />
              <SafetyNote locationId={her.homeLocationId} />
            </Stack>
          )
        }
      </Asked>
    </div>
  );
}

const whereSheIs = ({ pregnancy }: ClientCard) =>
  [
    pregnancy?.daysSinceBirth == null
      ? pregnancy?.age
      : `${sinceBirth(pregnancy.daysSinceBirth)} after the birth`,
    pregnancy?.stageName,
  ]
    .filter((part) => part != null)
    .join(', ');

/** After a loss: no tape, no prompts, nothing asked. */
function Quiet({ her }: { her: ClientCard }) {
  return (
    <Stack>
      <Title>{her.called}</Title>
      <Text>
        Your bookings have been released and nothing is owed for them. We will not write to you, and
        nothing is asked of you.
      </Text>
      <Text>
        Whenever you would like to talk, ring us or come by. If you would like to come again one
        day, tell the owner of the studio, who opens your page for you. All that is yours is still
        here, under “About me”.
      </Text>
      <SafetyNote locationId={her.homeLocationId} />
    </Stack>
  );
}
