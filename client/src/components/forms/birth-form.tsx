import { Radio, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { useReportBirth } from '@/api/clients';
import { Problem } from '@/api/problem';
import type { BirthMode } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { DayInput } from './day-input';
import { SubmitRow } from './submit-row';

const modes: { value: BirthMode; label: string }[] = [
  { value: 'vaginal', label: 'Vaginal' },
  { value: 'assisted', label: 'Assisted (forceps or suction)' },
  { value: 'caesarean', label: 'Caesarean' },
  { value: 'unknown', label: 'Rather not say, or not known' },
];

interface Props {
  clientId: number;
  today: string;
  onDone: () => void;
}

/** The day and the mode, and nothing else is asked. */
export function BirthForm({ clientId, today, onDone }: Props) {
  const [on, setOn] = useState<string | null>(today);
  const [mode, setMode] = useState<BirthMode | null>(null);
  const report = useReportBirth(clientId);
  const fields = report.error instanceof Problem ? report.error.fields : {};
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (on === null || mode === null) return;
        void report.mutateAsync({ on, mode }).then(
          ({ bookingsReleased }) => {
            tell(
              bookingsReleased > 0
                ? `Noted. ${bookingsReleased} bookings for before the birth were released.`
                : 'Noted.',
            );
            onDone();
          },
          () => undefined,
        );
      }}
    >
      <Stack>
        <Refused error={report.error} />
        <DayInput
          label="Day of the birth"
          maxDate={today}
          clearable={false}
          value={on}
          onChange={setOn}
          error={fields.on}
          required
        />
        <Radio.Group
          label="How"
          description="It decides when classes are safe again."
          value={mode}
          onChange={(value) => setMode(value)}
          error={fields.mode}
        >
          <Stack gap="xs" mt="xs">
            {modes.map(({ value, label }) => (
              <Radio key={value} value={value} label={label} />
            ))}
          </Stack>
        </Radio.Group>
        <Text size="sm" c="dimmed">
          Classes for the time after birth are counted from this day. A new letter will be needed.
        </Text>
      </Stack>
      <SubmitRow
        label="Note the birth"
        busy={report.isPending}
        disabled={on === null || mode === null}
        onCancel={onDone}
      />
    </form>
  );
}
