import { Button, Group, Modal, NumberInput, Stack, Text, TextInput } from '@mantine/core';
import { useState } from 'react';
import { useMakeDraft } from '@/api/drafts';
import { DayInput } from '@/components/forms/day-input';
import { Refused } from '@/components/states/asked';
import { addDays, dayAndMonth, mondayOf } from '@/components/time/days';

interface Props {
  day: string;
  onMade: (draftId: number) => void;
  onClose: () => void;
}

/** Some weeks of the timetable as a draft. */
export function MakeDraft({ day, onMade, onClose }: Props) {
  const [from, setFrom] = useState<string | null>(mondayOf(day));
  const [weeks, setWeeks] = useState(2);
  const [name, setName] = useState('');
  const make = useMakeDraft();
  const monday = mondayOf(from ?? day);
  const to = addDays(monday, weeks * 7 - 1);
  const standard = `${dayAndMonth(monday)} to ${dayAndMonth(to)}`;
  return (
    <Modal opened onClose={onClose} title="A new draft">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          make.mutate(
            { name: name.trim() === '' ? standard : name.trim(), from: monday, to },
            { onSuccess: ({ id }) => onMade(id) },
          );
        }}
      >
        <Stack>
          <Text>
            A draft is a copy of these weeks. Nothing in the timetable changes, and nobody is told
            anything, until it is published.
          </Text>
          <DayInput label="A day of its first week" required value={from} onChange={setFrom} />
          <NumberInput
            label="Weeks"
            min={1}
            max={26}
            value={weeks}
            onChange={(value) => setWeeks(Math.min(Math.max(Number(value) || 1, 1), 26))}
          />
          <TextInput
            label="Name"
            maxLength={80}
            placeholder={standard}
            value={name}
            onChange={(event) => setName(event.currentTarget.value)}
          />
          <Refused error={make.error} />
          <Group>
            <Button type="submit" loading={make.isPending} disabled={from === null}>
              Make the draft
            </Button>
            <Button variant="default" onClick={onClose}>
              Leave it
            </Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
}
