import { Checkbox, Group, MultiSelect, NumberInput, Radio, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { useBeginAssignment } from '@/api/assignments';
import { useMe } from '@/api/session';
import { staffQueries } from '@/api/staff';
import type { AssignmentScope } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { addDays, mondayOf } from '@/components/time/days';
import { scopeWords } from './words';

const scopes: AssignmentScope[] = ['unstaffed', 'nobodyBooked', 'all'];

const bends = [
  { value: 'hours', label: 'Hours somebody gave' },
  { value: 'weeklyMinutes', label: 'Minutes agreed for a week' },
  { value: 'rest', label: 'Rest between two days' },
];

export function AssignForm({ onBegun }: { onBegun: (run: number) => void }) {
  const { today } = useMe();
  const next = addDays(mondayOf(today), 7);
  const instructors = useQuery(staffQueries.instructors());
  const begin = useBeginAssignment();
  const form = useForm<{
    from: string | null;
    to: string | null;
    change: AssignmentScope;
    keepOf: string[];
    bend: string[];
    seconds: number | string;
  }>({
    initialValues: {
      from: next,
      to: addDays(next, 27),
      change: 'nobodyBooked',
      keepOf: [],
      bend: [],
      seconds: 120,
    },
    validate: {
      from: (day) => (day === null ? 'From which day?' : null),
      to: (day) => (day === null ? 'Until which day?' : null),
      seconds: (most) =>
        Number(most) >= 1 && Number(most) <= 900 ? null : 'From 1 to 900 seconds.',
    },
  });
  return (
    <form
      onSubmit={form.onSubmit(({ from, to, change, keepOf, bend, seconds }) => {
        if (from === null || to === null) return;
        begin.mutate(
          {
            from,
            to,
            change,
            keepOf: keepOf.map(Number),
            bend: {
              hours: bend.includes('hours'),
              weeklyMinutes: bend.includes('weeklyMinutes'),
              rest: bend.includes('rest'),
            },
            seconds: Number(seconds),
          },
          { onSuccess: ({ run }) => onBegun(run.id), onError: showRefusal(form) },
        );
      })}
    >
      <Stack maw="36rem">
        <Refused error={begin.error} />
        <Group grow align="flex-start">
          <DayInput label="First day" {...form.getInputProps('from')} />
          <DayInput label="Last day" {...form.getInputProps('to')} />
        </Group>
        <Radio.Group label="What may change" {...form.getInputProps('change')}>
          <Stack gap="xs" mt="xs">
            {scopes.map((scope) => (
              <Radio key={scope} value={scope} label={scopeWords[scope]} />
            ))}
          </Stack>
        </Radio.Group>
        <MultiSelect
          label="Who keeps what she teaches today"
          description="Her sessions stay hers, whatever else changes."
          data={(instructors.data ?? []).map(({ id, name }) => ({
            value: String(id),
            label: name,
          }))}
          searchable
          clearable
          {...form.getInputProps('keepOf')}
        />
        <Checkbox.Group
          label="What may be bent"
          description="Only where a session would have nobody otherwise."
          {...form.getInputProps('bend')}
        >
          <Stack gap="xs" mt="xs">
            {bends.map((bend) => (
              <Checkbox key={bend.value} {...bend} />
            ))}
          </Stack>
        </Checkbox.Group>
        <NumberInput
          label="Seconds it may take at most"
          description="When the time is over, the best found so far is kept."
          min={1}
          max={900}
          allowDecimal={false}
          {...form.getInputProps('seconds')}
        />
      </Stack>
      <SubmitRow label="Work it out" busy={begin.isPending} />
    </form>
  );
}
