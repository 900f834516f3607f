import { Radio, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useFileScreening } from '@/api/clients';
import type { ScreeningOutcome } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';

const outcomes: { value: ScreeningOutcome; label: string }[] = [
  { value: 'nothingFound', label: 'Nothing found' },
  { value: 'clearanceNeeded', label: 'A clearance letter is needed' },
  { value: 'noExercise', label: 'No exercise here for now' },
];

interface Props {
  clientId: number;
  today: string;
  onDone: () => void;
}

/** The outcome only; her answers stay with her and her clinician. */
export function ScreeningForm({ clientId, today, onDone }: Props) {
  const form = useForm<{ answeredOn: string | null; outcome: ScreeningOutcome | null }>({
    initialValues: { answeredOn: today, outcome: null },
    validate: {
      answeredOn: (day) => (day === null ? 'When did she answer?' : null),
      outcome: (outcome) => (outcome === null ? 'What came of it?' : null),
    },
  });
  const file = useFileScreening(clientId);
  return (
    <form
      onSubmit={form.onSubmit(({ answeredOn, outcome }) => {
        if (answeredOn === null || outcome === null) return;
        file.mutate(
          { answeredOn, outcome },
          {
            onSuccess: () => {
              tell('The screening is noted.');
              onDone();
            },
            onError: showRefusal(form),
          },
        );
      })}
    >
      <Stack>
        <Refused error={file.error} />
        <DayInput
          label="Answered on"
          maxDate={today}
          required
          {...form.getInputProps('answeredOn')}
        />
        <Radio.Group label="Outcome" {...form.getInputProps('outcome')}>
          <Stack gap="xs" mt="xs">
            {outcomes.map(({ value, label }) => (
              <Radio key={value} value={value} label={label} />
            ))}
          </Stack>
        </Radio.Group>
      </Stack>
      <SubmitRow label="Note it" busy={file.isPending} onCancel={onDone} />
    </form>
  );
}
