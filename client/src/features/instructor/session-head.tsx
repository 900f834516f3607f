import { Button, Group, Menu, SegmentedControl, Text, Title } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import { useMe } from '@/api/session';
import type { Roster } from '@/api/types';
import { CalendarFile } from '@/components/calendar/calendar-file';
import { Go, GoButton } from '@/components/states/go';
import { longDay, nearDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { CannotTake } from './cover/cannot-take';
import type { Sheet } from './printing';

export type Pressing = 'look' | 'check-in';
export type Shown = 'floor' | 'table';

interface Props {
  roster: Roster;
  pressing: Pressing;
  onPressing: (pressing: Pressing) => void;
  shown: Shown;
  onShown: (shown: Shown) => void;
  onPrint: (sheet: Sheet) => void;
}

/** Which session, when and where, and what can be done with it. */
export function SessionHead({ roster, pressing, onPressing, shown, onShown, onPrint }: Props) {
  const { today } = useMe();
  const { session, people, waiting, plan } = roster;
  const isToday = session.on === today;
  const planned = plan.length > 0 && people.length > 0;
  return (
    <Group justify="space-between" align="flex-start" mb="md">
      <div>
        <Title id="session">{session.className}</Title>
        <Text size="lg">
          {isToday ? 'Today' : longDay(session.on)}
          {nearDay(session.on, today) === 'tomorrow' && ' (tomorrow)'},{' '}
          <SessionTime session={session} />
        </Text>
        <Text c="dimmed">
          {session.roomName}, {session.locationName} · {people.length} of {session.seats} booked
          {waiting.length > 0 && `, ${waiting.length} waiting`} · {session.checkedIn} here
        </Text>
        <CalendarFile
          sessionId={session.id}
          of={`${session.className}, ${longDay(session.on)} ${session.startsLocal}`}
        />
      </div>
      <Group gap="xs">
        {planned && (
          <SegmentedControl
            aria-label="The class as"
            value={shown}
            onChange={onShown}
            data={[
              { value: 'floor', label: 'Floor' },
              { value: 'table', label: 'Whole class' },
            ]}
          />
        )}
        {isToday && people.length > 0 && shown === 'floor' && (
          <SegmentedControl
            aria-label="Pressing a mat"
            value={pressing}
            onChange={onPressing}
            data={[
              { value: 'look', label: 'Look' },
              { value: 'check-in', label: 'All well: check in' },
            ]}
          />
        )}
        <GoButton to="/teach/sessions/$sessionId/class" params={{ sessionId: String(session.id) }}>
          Class mode
        </GoButton>
        <CannotTake session={session} />
        <Go
          to="/teach/plans/$classId"
          params={{ classId: String(session.classId) }}
          search={{ session: session.id }}
        >
          Change the plan for this session
        </Go>
        {planned ? (
          <Menu position="bottom-end">
            <Menu.Target>
              <Button variant="default" leftSection={<IconPrinter size={18} aria-hidden />}>
                Print
              </Button>
            </Menu.Target>
            <Menu.Dropdown>
              <Menu.Item onClick={() => onPrint('plan')}>Who does what, on one page</Menu.Item>
              <Menu.Item onClick={() => onPrint('roster')}>Roster</Menu.Item>
            </Menu.Dropdown>
          </Menu>
        ) : (
          <Button
            variant="default"
            leftSection={<IconPrinter size={18} aria-hidden />}
            onClick={() => onPrint('roster')}
          >
            Print
          </Button>
        )}
      </Group>
    </Group>
  );
}
