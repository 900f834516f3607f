import { Button, Group, Modal, Text } from '@mantine/core';
import { useState } from 'react';
import { useWithdrawLetter } from '@/api/letters';
import type { Letter } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { momentWords } from '@/components/time/zone';

/** Takes back a letter that waits or counts. It cannot be undone, so it is asked twice. */
export function WithdrawLetter({ letter }: { letter: Letter }) {
  const [asking, setAsking] = useState(false);
  const withdraw = useWithdrawLetter({ clientId: letter.clientId, letterId: letter.id });
  if (letter.withdrawn || letter.state === 'refused') return null;
  return (
    <>
      <Button
        size="xs"
        variant="default"
        onClick={() => setAsking(true)}
        aria-label={`Withdraw the letter handed in ${momentWords(letter.filedAt)}`}
      >
        Withdraw
      </Button>
      <Modal opened={asking} onClose={() => setAsking(false)} title="Withdraw this letter">
        <Refused error={withdraw.error} />
        <Text>
          It no longer counts, from now on, and what it asked for no longer holds. Bookings that
          rest on it need another letter. This cannot be undone; the letter can be handed in again.
        </Text>
        <Group mt="lg">
          <Button
            color="brick"
            loading={withdraw.isPending}
            onClick={() =>
              void withdraw.mutateAsync(undefined).then(
                () => {
                  setAsking(false);
                  tell('The letter was withdrawn.');
                },
                () => undefined,
              )
            }
          >
            Withdraw it
          </Button>
          <Button variant="default" onClick={() => setAsking(false)}>
            Leave it
          </Button>
        </Group>
      </Modal>
    </>
  );
}
