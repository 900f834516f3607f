import { Button, Group, Modal, Text, TextInput, Title } from '@mantine/core';
import { Go } from '@/components/states/go';
import { useState } from 'react';
import { useAcceptMove, useDeclineMove } from '@/api/moves';
import type { Move, SessionSummary } from '@/api/types';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { MoveTape } from '@/components/tape/move-tape';
import { longDay, shortDay } from '@/components/time/days';
import { Needs, VerdictMark } from '@/components/verdict/mark';
import classes from './desk.module.css';

export function SuggestedMove({ move }: { move: Move }) {
  const accept = useAcceptMove();
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
        <ul className={classes.steps}>
          {move.steps.map(({ bookingId, from, to, fit }) => (
            <li key={bookingId}>
              <del>{place(from)}</del>
              {to == null || fit == null ? (
                <span>
                  <Needs tone="mind">nothing found; the booking stays, marked</Needs>
                </span>
              ) : (
                <span>
                  → <strong>{place(to)}</strong>{' '}
                  <VerdictMark verdict={fit.verdict}>{fit.label}</VerdictMark>
                </span>
              )}
            </li>
          ))}
        </ul>
        <Refused error={accept.error} />
        <Group mt="md">
          {movable > 0 && (
            <Button
              loading={accept.isPending}
              onClick={() =>
                accept.mutate(move.id, {
                  onSuccess: ({ moved }) =>
                    tell(`${move.name}: ${moved === 1 ? '1 booking' : `${moved} bookings`} moved.`),
                })
              }
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

const place = ({ on, startsLocal, className }: SessionSummary) =>
  `${shortDay(on)} ${startsLocal} ${className}`;
