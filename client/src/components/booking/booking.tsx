import { Button, Group, Modal, Text } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useRef, useState } from 'react';
import { useBook, useCancelBooking, type Wanted } from '@/api/bookings';
import type { SessionSummary } from '@/api/types';
import { slip, tell, tellRefused } from '@/components/states/told';
import { shortDay } from '@/components/time/days';

const describe = (session: SessionSummary) =>
  `${session.className}, ${shortDay(session.on)} ${session.startsLocal}`;

/** Books, and says at the foot of the page whether it became a seat or a place in line. */
export function useBooking(clientId: number) {
  const book = useBook();
  const pressed = useRef(new Set<number>());
  return {
    busyWith: book.isPending ? book.variables.sessionId : null,
    book: (session: SessionSummary) => {
      // The second press of a double click comes before the button shows that it is busy.
      if (pressed.current.has(session.id)) return;
      pressed.current.add(session.id);
      // By promise: of two bookings under way, each is told.
      void book
        .mutateAsync({ sessionId: session.id, clientId })
        .then(
          ({ status, place }) =>
            tell(
              status === 'booked'
                ? `Booked: ${describe(session)}.`
                : `On the waiting list${place == null ? '' : `, place ${place}`}: ${describe(session)}.`,
            ),
          tellRefused,
        )
        .finally(() => pressed.current.delete(session.id));
    },
  };
}

const undoFor = 12_000;

interface CancelProps {
  bookingId: number;
  clientId: number;
  session: SessionSummary;
  waiting: boolean;
  /** For whom, where several cancel buttons stand together. */
  who?: string;
}

/**
 * Gives a seat up at once and offers to take it back. When others wait for the seat it is theirs
 * the moment it is free, so then she is asked first.
 */
export function CancelButton({ bookingId, clientId, session, waiting, who }: CancelProps) {
  const cancel = useCancelBooking();
  const again = useBook();
  const [asking, setAsking] = useState(false);

  // By promise, not by callback: this button is gone from the page before the answer is told.
  const takeBack = (wanted: Wanted) =>
    again
      .mutateAsync(wanted)
      .then(
        ({ status }) =>
          tell(
            status === 'booked'
              ? `Booked again: ${describe(session)}.`
              : `The seat has gone to somebody who was waiting; on the waiting list now: ${describe(session)}.`,
          ),
        tellRefused,
      );

  const giveUp = () => {
    setAsking(false);
    cancel
      .mutateAsync({ bookingId, clientId })
      .then(
        () => offerUndo(session, () => void takeBack({ sessionId: session.id, clientId })),
        tellRefused,
      );
  };

  return (
    <>
      <Button
        size="xs"
        variant="default"
        loading={cancel.isPending}
        onClick={() => (session.waiting > 0 && !waiting ? setAsking(true) : giveUp())}
        aria-label={`${waiting ? 'Leave the line' : 'Cancel'}: ${who === undefined ? '' : `${who}, `}${describe(session)}`}
      >
        {waiting ? 'Leave the line' : 'Cancel'}
      </Button>
      <Modal opened={asking} onClose={() => setAsking(false)} title="Give this seat up?" size="sm">
        <Text>
          {session.waiting === 1 ? 'One person is' : `${session.waiting} people are`} waiting for{' '}
          {describe(session)}. The seat goes to the first of them at once and cannot be taken back.
        </Text>
        <Group mt="lg">
          <Button onClick={giveUp}>Give the seat up</Button>
          <Button variant="default" onClick={() => setAsking(false)}>
            Keep it
          </Button>
        </Group>
      </Modal>
    </>
  );
}

function offerUndo(session: SessionSummary, takeBack: () => void) {
  const id = `cancelled-${session.id}-${Date.now()}`;
  notifications.show({
    id,
    ...slip,
    autoClose: undoFor,
    color: 'leaf',
    message: (
      <Group justify="space-between" wrap="nowrap">
        <Text size="md">Cancelled: {describe(session)}.</Text>
        <Button
          size="xs"
          onClick={() => {
            notifications.hide(id);
            takeBack();
          }}
        >
          Undo
        </Button>
      </Group>
    ),
  });
}
