import { Button, Group, Modal, Select, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import type { Draft } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { addDays, dayAndMonth, mondayOf } from '@/components/time/days';
import { weeksBetween } from './place';
import type { Steps } from './use-steps';

interface Props {
  draft: Draft;
  monday: string;
  steps: Steps;
  onClose: (shown?: string) => void;
}

const weekWords = (monday: string) =>
  `${dayAndMonth(monday)} to ${dayAndMonth(addDays(monday, 6))}`;

/** Lays the sessions of one week onto another; those that stand there already are left alone. */
export function CopyWeek({ draft, monday, steps, onClose }: Props) {
  const weeks = weeksBetween(mondayOf(draft.draft.from), draft.draft.to);
  const [from, setFrom] = useState(monday);
  const [to, setTo] = useState(
    weeks.find((week) => week > monday) ?? weeks.find((week) => week !== monday) ?? monday,
  );
  const data = weeks.map((week) => ({ value: week, label: weekWords(week) }));
  return (
    <Modal opened onClose={() => onClose()} title="Copy a week">
      <Stack>
        <Text>
          Same weekday, hour, room, class and instructor. A session that stands there already is not
          added twice; days on which a location is shut are named as conflicts.
        </Text>
        <Select
          label="From"
          allowDeselect={false}
          data={data}
          value={from}
          onChange={(value) => value !== null && setFrom(value)}
        />
        <Select
          label="Onto"
          allowDeselect={false}
          data={data}
          value={to}
          onChange={(value) => value !== null && setTo(value)}
        />
        <Refused error={steps.copy.error} />
        <Group>
          <Button
            loading={steps.copy.isPending}
            disabled={from === to}
            onClick={() =>
              steps.copyWeek(
                from,
                to,
                (count) => `${count} sessions copied onto ${weekWords(to)}`,
                () => onClose(to),
              )
            }
          >
            Copy
          </Button>
          <Button variant="default" onClick={() => onClose()}>
            Leave it
          </Button>
        </Group>
      </Stack>
    </Modal>
  );
}
