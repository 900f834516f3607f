import {
  Alert,
  Fieldset,
  Group,
  NumberInput,
  SegmentedControl,
  SimpleGrid,
  Stack,
  Text,
} from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { datingQueries, isGiven } from '@/api/dating';
import { wordsOf } from '@/api/problem';
import { fullDate } from '@/components/time/days';
import { DayInput } from './day-input';
import { evidenceOf, type DatingDraft } from './dating-draft';

interface Props {
  draft: DatingDraft;
  onChange: (draft: DatingDraft) => void;
  /** Messages by field as the server names them. */
  errors?: Record<string, unknown>;
  /** The day on which the preview is reckoned. */
  today: string;
}

/** What her due date rests on: any or all of four, with what it comes to shown as it is typed. */
export function DatingFields({ draft, onChange, errors = {}, today }: Props) {
  const set = (part: Partial<DatingDraft>) => onChange({ ...draft, ...part });
  const of = (field: string) => {
    const error = errors[field];
    return typeof error === 'string' ? error : undefined;
  };
  return (
    <Stack gap="md">
      <Fieldset legend={<strong>Last period</strong>} variant="unstyled">
        <Group align="flex-start" grow>
          <DayInput
            label="First day of it"
            maxDate={today}
            value={draft.lastPeriod}
            error={of('lastPeriod')}
            onChange={(lastPeriod) => set({ lastPeriod })}
          />
          <NumberInput
            label="Her usual cycle, days"
            placeholder="28"
            min={20}
            max={45}
            value={draft.cycleDays}
            error={of('cycleDays')}
            onChange={(cycleDays) => set({ cycleDays })}
          />
        </Group>
      </Fieldset>
      <Fieldset legend={<strong>Ultrasound</strong>} variant="unstyled">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <DayInput
            label="Day of the scan"
            maxDate={today}
            value={draft.scanDate}
            error={of('scan.date') ?? of('scan')}
            onChange={(scanDate) => set({ scanDate })}
          />
          <Group grow align="flex-start">
            <NumberInput
              label="Measured, weeks"
              min={4}
              max={42}
              value={draft.scanWeeks}
              error={of('scan.weeks')}
              onChange={(scanWeeks) => set({ scanWeeks })}
            />
            <NumberInput
              label="and days"
              min={0}
              max={6}
              value={draft.scanDays}
              error={of('scan.days')}
              onChange={(scanDays) => set({ scanDays })}
            />
          </Group>
        </SimpleGrid>
      </Fieldset>
      <Fieldset legend={<strong>Embryo transfer</strong>} variant="unstyled">
        <Group align="flex-end" grow>
          <DayInput
            label="Day of the transfer"
            maxDate={today}
            value={draft.transferDate}
            error={of('transfer.date') ?? of('transfer')}
            onChange={(transferDate) => set({ transferDate })}
          />
          <div>
            <Text size="sm" fw={500} id="embryo-age">
              Its age, days
            </Text>
            <SegmentedControl
              fullWidth
              aria-labelledby="embryo-age"
              value={draft.embryoDays}
              onChange={(embryoDays) => set({ embryoDays })}
              data={['3', '5', '6'].map((value) => ({ value, label: value }))}
            />
          </div>
        </Group>
      </Fieldset>
      <Fieldset legend={<strong>Stated by her clinician</strong>} variant="unstyled">
        <DayInput
          label="Due date"
          value={draft.stated}
          error={of('stated')}
          onChange={(stated) => set({ stated })}
        />
      </Fieldset>
      <Preview draft={draft} today={today} />
    </Stack>
  );
}

function Preview({ draft, today }: { draft: DatingDraft; today: string }) {
  const [settled] = useDebouncedValue(draft, 250);
  const asked = evidenceOf(settled);
  const { data, error } = useQuery(datingQueries.preview(asked, today));
  return (
    <div role="status" aria-live="polite">
      {!isGiven(asked) ? (
        <Text c="dimmed">Give any one of these; her due date appears here.</Text>
      ) : error ? (
        <Alert color="amber" variant="light">
          {wordsOf(error)}
        </Alert>
      ) : (
        data && (
          <Alert color="leaf" variant="light">
            <Text fw={700} size="lg">
              Due {fullDate(data.dueDate)}, today {data.gestationalAge.weeks}w{' '}
              {data.gestationalAge.days}d
            </Text>
            <Text>{data.stageName}</Text>
            <Text size="sm">{data.explanation}</Text>
          </Alert>
        )
      )}
    </div>
  );
}
