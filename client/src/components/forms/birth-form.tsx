import { Button, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { useReportBirth } from '@/api/clients';
import type { BirthMode, Released } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { addDays, fullDate } from '@/components/time/days';
import { birthModes } from './birth-modes';
import { DayInput } from './day-input';

interface Props {
  clientId: number;
  today: string;
  onDone: (released: Released) => void;
}

/** Two taps: the day, and how. Nothing else is asked. */
export function BirthForm({ clientId, today, onDone }: Props) {
  const [on, setOn] = useState<string | null>(null);
  const [another, setAnother] = useState(false);
  const report = useReportBirth(clientId);
  const send = (day: string, mode: BirthMode) =>
    void report.mutateAsync({ on: day, mode }).then(onDone, () => undefined);

  if (on === null)
    return (
      <Stack gap="xs">
        <Text fw={600}>When was it?</Text>
        <Group gap="xs">
          <Button variant="default" onClick={() => setOn(today)}>
            Today
          </Button>
          <Button variant="default" onClick={() => setOn(addDays(today, -1))}>
            Yesterday
          </Button>
          <Button variant="default" aria-expanded={another} onClick={() => setAnother(!another)}>
            Another day
          </Button>
        </Group>
        {another && (
          <DayInput label="Day of the birth" maxDate={today} value={null} onChange={setOn} />
        )}
      </Stack>
    );
  return (
    <Stack gap="xs">
      <Refused error={report.error} />
      <Text fw={600}>How was it, on {fullDate(on)}?</Text>
      <Group gap="xs">
        {birthModes.map(({ value, label }) => (
          <Button
            key={value}
            variant="default"
            loading={report.isPending && report.variables.mode === value}
            disabled={report.isPending}
            onClick={() => send(on, value)}
          >
            {label}
          </Button>
        ))}
      </Group>
      <Group>
        <Button
          variant="transparent"
          px={0}
          color="gray"
          disabled={report.isPending}
          onClick={() => {
            report.reset();
            setOn(null);
          }}
        >
          Another day
        </Button>
      </Group>
      <Text size="sm" c="dimmed">
        It decides when classes are safe again. What is booked is released, without charge, and the
        time after the birth is counted from this day.
      </Text>
    </Stack>
  );
}
