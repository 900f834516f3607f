import { Button, Group, Modal, Text, TextInput, Title } from '@mantine/core';
import { Go } from '@/components/states/go';
import { useState } from 'react';
import { useDeclineMove } from '@/api/moves';
import type { Move } from '@/api/types';
import { MoveSteps, useMoving } from '@/components/moves/move-steps';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { MoveTape } from '@/components/tape/move-tape';
import { longDay } from '@/components/time/days';
import classes from './desk.module.css';

export function SuggestedMove({ move }: { move: Move }) {
  const accept = useMoving((moved) => `${move.name}: ${moved} moved.`);
  const movable = move.steps.filter(({ to }) => to != null).length;
  const [declining, setDeclining] = useState(false);
  return (
    <li className={classes.move}>
      <div>
        <Title order={2}>
          <Go
            to="/desk/clients/$clientId"
            params={{ clientId: String(move.clientId) }}
            c="inherit"
            inherit
          >
            {move.name}
          </Go>
        </Title>
        <Text mb="sm">
          {move.crossesToName} from {longDay(move.crossesOn)}
        </Text>
        <MoveTape move={move} />
      </div>
      <div>
        <MoveSteps move={move} />
        <Refused error={accept.error} />
        <Group mt="md">
          {movable > 0 && (
            <Button
              loading={accept.isPending}
              onClick={() => accept.run(move)}
              aria-label={`Accept the moves for ${move.name}`}
            >
              {movable === 1 ? 'Move this booking' : `Move these ${movable}`}
            </Button>
          )}
          <Button
            variant="default"
            onClick={() => setDeclining(true)}
            aria-label={`Decline the moves for ${move.name}`}
          >
            Decline
          </Button>
        </Group>
      </div>
      <Modal
        opened={declining}
        onClose={() => setDeclining(false)}
        title={`Decline the moves for ${move.name}`}
        size="md"
      >
        <Decline move={move} onDone={() => setDeclining(false)} />
      </Modal>
    </li>
  );
}

function Decline({ move, onDone }: { move: Move; onDone: () => void }) {
  const [reason, setReason] = useState('');
  const decline = useDeclineMove();
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        decline.mutate({ id: move.id, reason }, { onSuccess: onDone });
      }}
    >
      <Refused error={decline.error} />
      <TextInput
        label="Why"
        description="Kept with the suggestion. Her bookings stay as they are, marked as no longer suiting."
        required
        data-autofocus
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <SubmitRow
        label="Decline"
        busy={decline.isPending}
        disabled={reason.trim() === ''}
        onCancel={onDone}
      />
    </form>
  );
}
