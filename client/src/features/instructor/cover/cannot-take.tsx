import { Button, Group, Modal, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { coverQueries, useAskForCover, useWithdrawCover } from '@/api/cover';
import type { SessionSummary } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell, tellRefused } from '@/components/states/told';
import { Needs } from '@/components/verdict/mark';

/** On a session of hers that is to come: she asks for cover, or takes that back. */
export function CannotTake({ session }: { session: SessionSummary }) {
  const cover = useQuery(coverQueries.mine());
  const ask = useAskForCover();
  const withdraw = useWithdrawCover();
  const [asking, setAsking] = useState(false);
  if (
    cover.data === undefined ||
    session.status !== 'open' ||
    new Date(session.startsAt) <= new Date()
  )
    return null;
  if (cover.data.mine.some((one) => one.session.id === session.id))
    return (
      <Group gap="xs">
        <Needs tone="mind">Cover is asked</Needs>
        <Button
          variant="default"
          loading={withdraw.isPending}
          onClick={() =>
            withdraw.mutate(session.id, {
              onSuccess: () => tell('You teach it after all. Those who were asked are told.'),
              onError: tellRefused,
            })
          }
        >
          I teach it after all
        </Button>
      </Group>
    );
  return (
    <>
      <Button variant="default" onClick={() => setAsking(true)}>
        I can’t take this one
      </Button>
      <Modal
        opened={asking}
        onClose={() => setAsking(false)}
        title="Ask for cover of this session?"
      >
        <Text mb="md">
          Colleagues who could take {session.className} are asked at once, and the owner sees it. It
          stays yours until somebody has it, and nobody booked is told before that.
        </Text>
        <Refused error={ask.error} />
        <Group mt="md">
          <Button
            loading={ask.isPending}
            onClick={() =>
              ask.mutate(session.id, {
                onSuccess: ({ asked }) => {
                  setAsking(false);
                  tell(askedWords(asked));
                },
              })
            }
          >
            Ask for cover
          </Button>
          <Button variant="default" onClick={() => setAsking(false)}>
            Not now
          </Button>
        </Group>
      </Modal>
    </>
  );
}

export const askedWords = (people: number) =>
  people === 0
    ? 'Nobody who teaches here could take it as things stand. The owner sees it.'
    : people === 1
      ? '1 colleague is asked.'
      : `${people} colleagues are asked.`;
