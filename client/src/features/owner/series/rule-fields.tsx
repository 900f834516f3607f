import {
  Chip,
  Group,
  Input,
  NumberInput,
  Radio,
  SegmentedControl,
  Stack,
  TextInput,
} from '@mantine/core';
import { DayInput } from '@/components/forms/day-input';
import { weekdays, type RuleDraft } from './rule-draft';

interface Props {
  rule: RuleDraft;
  onChange: (rule: RuleDraft) => void;
  error?: string;
}

/** Which days, how often, until when. */
export function RuleFields({ rule, onChange, error }: Props) {
  const set = (part: Partial<RuleDraft>) => onChange({ ...rule, ...part });
  return (
    <Stack>
      <SegmentedControl
        aria-label="Kind of rule"
        value={rule.kind}
        onChange={(kind) => set({ kind })}
        data={[
          { value: 'weekly', label: 'On days of the week' },
          { value: 'own', label: 'Another rule' },
        ]}
      />
      {rule.kind === 'own' ? (
        <TextInput
          label="Rule"
          description="As RFC 5545 writes it: FREQ=MONTHLY;BYDAY=1TU is the first Tuesday of every month."
          value={rule.own}
          error={error}
          onChange={(event) => set({ own: event.currentTarget.value })}
        />
      ) : (
        <>
          <Input.Wrapper label="Days" error={error} labelElement="div">
            <Chip.Group multiple value={rule.days} onChange={(days) => set({ days })}>
              <Group gap="xs" mt={4} role="group" aria-label="Days of the week">
                {weekdays.map(({ code, short, long }) => (
                  <Chip key={code} value={code} aria-label={long} size="md" variant="outline">
                    {short}
                  </Chip>
                ))}
              </Group>
            </Chip.Group>
          </Input.Wrapper>
          <NumberInput
            label="Every how many weeks"
            min={1}
            max={52}
            clampBehavior="strict"
            allowDecimal={false}
            value={rule.every}
            onChange={(every) => set({ every: Number(every) || 1 })}
            maw="12rem"
          />
          <Radio.Group label="Ends" value={rule.ends} onChange={(ends) => set({ ends })}>
            <Group mt={4}>
              <Radio value="never" label="Goes on" />
              <Radio value="on" label="On a day" />
              <Radio value="after" label="After a number of dates" />
            </Group>
          </Radio.Group>
          {rule.ends === 'on' && (
            <DayInput
              label="Last day"
              value={rule.until}
              onChange={(until) => set({ until })}
              maw="16rem"
            />
          )}
          {rule.ends === 'after' && (
            <NumberInput
              label="Number of dates"
              min={1}
              max={1000}
              clampBehavior="strict"
              allowDecimal={false}
              value={rule.count}
              onChange={(count) => set({ count: Number(count) || 1 })}
              maw="12rem"
            />
          )}
        </>
      )}
    </Stack>
  );
}
