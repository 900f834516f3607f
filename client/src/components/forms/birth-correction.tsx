import { Button, Group, Radio, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { useCorrectBirth, useTakeBackBirth } from '@/api/clients';
import { Problem } from '@/api/problem';
import type { BirthMode, ClientCard } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { birthModes, broughtBackWords } from './birth-modes';
import { DayInput } from './day-input';
import { SubmitRow } from './submit-row';

interface Props {
  her: ClientCard;
  today: string;
  onDone: () => void;
}

/** Another day or mode, or that there was no birth. The desk is not told the mode; what it does not choose stays. */
export function BirthCorrection({ her, today, onDone }: Props) {
  const { pregnancy } = her;
  const [on, setOn] = useState<string | null>(pregnancy?.bornOn ?? null);
  const [mode, setMode] = useState<BirthMode | null>(pregnancy?.birthMode ?? null);
  const correct = useCorrectBirth(her.id);
  const takeBack = useTakeBackBirth(her.id);
  const fields = correct.error instanceof Problem ? correct.error.fields : {};
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (on === null) return;
        void correct.mutateAsync({ on, mode }).then(
          () => {
            tell('Put right. Everything after it is counted from there.');
            onDone();
          },
          () => undefined,
        );
      }}
    >
      <Stack>
        <Refused error={correct.error ?? takeBack.error} />
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
          description={
            pregnancy?.birthMode == null ? 'Leave it open and it stays as it was told.' : undefined
          }
          value={mode}
          onChange={(value) => setMode(value)}
          error={fields.mode}
        >
          <Stack gap="xs" mt="xs">
            {birthModes.map(({ value, label }) => (
              <Radio key={value} value={value} label={label} />
            ))}
          </Stack>
        </Radio.Group>
      </Stack>
      <SubmitRow
        label="Put it right"
        busy={correct.isPending}
        disabled={on === null || takeBack.isPending}
        onCancel={onDone}
      />
      {pregnancy?.birthRevocable === true && (
        <Stack gap="xs" mt="xl">
          <Text size="sm" c="dimmed">
            Was it reported by mistake? Then it is taken back, and what had been booked is booked
            again where there is still a place.
          </Text>
          <Group>
            <Button
              variant="default"
              loading={takeBack.isPending}
              disabled={correct.isPending}
              onClick={() =>
                void takeBack.mutateAsync().then(
                  (back) => {
                    tell(broughtBackWords(back));
                    onDone();
                  },
                  () => undefined,
                )
              }
            >
              Take the birth back
            </Button>
          </Group>
        </Stack>
      )}
    </form>
  );
}
