import { ActionIcon, Button, Group, Menu, Modal } from '@mantine/core';
import { IconCheck, IconDots, IconHelp } from '@tabler/icons-react';
import { useState } from 'react';
import { useCheckIn } from '@/api/bookings';
import type { DoorAnswer, Person } from '@/api/types';
import { tellRefused } from '@/components/states/told';
import { WarningForm } from '@/components/warning/warning-form';
import { arrivalOf, arrivalWords } from './arrival';

interface Props {
  person: Person;
  sessionId: number;
  /** The session is today, where it is held. */
  canCheckIn: boolean;
  /** What the button says that raises a warning sign. */
  notWell: string;
  size?: 'xs' | 'sm';
}

/** Asked in one tap how she is: all well checks her in, anything else opens the warning with her and the session. */
export function Door({ person, sessionId, canCheckIn, notWell, size = 'sm' }: Props) {
  const checkIn = useCheckIn(sessionId);
  const [raising, setRaising] = useState(false);
  const arrival = arrivalOf(person);
  const here = arrival !== 'away';
  const answer = (given: DoorAnswer | null) =>
    checkIn.mutate({ bookingId: person.bookingId, answer: given }, { onError: tellRefused });
  return (
    <Group gap={6}>
      <Modal
        opened={raising}
        onClose={() => setRaising(false)}
        title={`${person.name}: something is not well`}
      >
        <WarningForm
          clientId={person.clientId}
          called={person.called}
          sessionId={sessionId}
          onDone={() => setRaising(false)}
        />
      </Modal>
      {here && (
        <Button
          size={size}
          variant="light"
          aria-pressed
          aria-label={`${person.name}: ${arrivalWords[arrival]}; press to take it back`}
          leftSection={
            arrival === 'well' ? (
              <IconCheck size={16} aria-hidden />
            ) : (
              <IconHelp size={16} aria-hidden />
            )
          }
          onClick={() => answer(null)}
        >
          {arrival === 'well' ? 'Here, all well' : 'Here, not asked'}
        </Button>
      )}
      {canCheckIn && arrival !== 'well' && (
        <Button
          size={size}
          aria-label={`${person.name}: all well${here ? '' : ', check in'}`}
          onClick={() => answer('allWell')}
        >
          All well
        </Button>
      )}
      <Button
        size={size}
        variant="default"
        aria-label={`${person.name}: ${notWell.toLowerCase()}`}
        onClick={() => setRaising(true)}
      >
        {notWell}
      </Button>
      {canCheckIn && !here && (
        <Menu position="bottom-end">
          <Menu.Target>
            <ActionIcon
              variant="default"
              size={size === 'xs' ? 30 : 36}
              aria-label={`${person.name}: more`}
            >
              <IconDots size={16} aria-hidden />
            </ActionIcon>
          </Menu.Target>
          <Menu.Dropdown>
            <Menu.Item onClick={() => answer('notAsked')}>
              Here, but not asked: her instructor asks
            </Menu.Item>
          </Menu.Dropdown>
        </Menu>
      )}
    </Group>
  );
}
