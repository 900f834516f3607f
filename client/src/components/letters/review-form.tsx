import {
  Checkbox,
  MultiSelect,
  NumberInput,
  SimpleGrid,
  Stack,
  Textarea,
  TextInput,
} from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { letterQueries } from '@/api/letters';
import { useMe } from '@/api/session';
import type { LetterReview, Trait } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { emptyReview, missingIn, reviewOf } from './review-draft';

interface Props {
  label: string;
  /** Sends it; may be refused, and then nothing that was typed is lost. */
  send: (review: LetterReview) => Promise<unknown>;
  busy: boolean;
  error: Error | null;
  onDone: () => void;
  onCancel?: () => void;
}

/** What a letter says, typed off it by somebody who may read it. */
export function ReviewForm({ label, send, busy, error, onDone, onCancel }: Props) {
  const { today } = useMe();
  const form = useForm({ initialValues: emptyReview, validate: missingIn });
  const traits = useQuery(letterQueries.traits());
  return (
    <form
      aria-label="What the letter says"
      noValidate
      onSubmit={form.onSubmit((draft) => {
        const review = reviewOf(draft);
        if (review !== null) void send(review).then(onDone, showRefusal(form));
      })}
    >
      <Stack>
        <Refused error={error} />
        <TextInput
          label="Written by"
          description="The clinician who signed it."
          maxLength={200}
          autoComplete="off"
          required
          {...form.getInputProps('issuedBy')}
        />
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <DayInput
            label="Written on"
            maxDate={today}
            required
            {...form.getInputProps('issuedOn')}
          />
          <DayInput label="Its own last day" required {...form.getInputProps('expiresOn')} />
        </SimpleGrid>
        <MultiSelect
          label="Leave out"
          description="Positions and demands that the letter asks to leave out."
          placeholder={form.values.leaveOut.length === 0 ? 'Nothing' : undefined}
          data={groupsOf(traits.data ?? [])}
          searchable
          clearable
          clearButtonProps={{ 'aria-label': 'Leave nothing out' }}
          nothingFoundMessage="Nothing by that name: write it in words below."
          {...form.getInputProps('leaveOut')}
        />
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <NumberInput
            label="Most effort"
            description="0 to 10, or empty."
            min={0}
            max={10}
            allowDecimal={false}
            {...form.getInputProps('effortMost')}
          />
          <NumberInput
            label="Highest heart rate"
            description="A minute, or empty."
            min={60}
            max={220}
            allowDecimal={false}
            {...form.getInputProps('heartRateMost')}
          />
        </SimpleGrid>
        <Textarea
          label="In words for the instructor"
          description="What to do or leave out. No condition by name: she decides who knows of it."
          maxLength={500}
          autosize
          minRows={2}
          {...form.getInputProps('words')}
        />
        <Checkbox
          label="It takes the place of earlier letters"
          description="What they asked for no longer holds. Otherwise both hold."
          {...form.getInputProps('replacesEarlier', { type: 'checkbox' })}
        />
      </Stack>
      <SubmitRow label={label} busy={busy} onCancel={onCancel} />
    </form>
  );
}

const groupsOf = (traits: readonly Trait[]) =>
  [
    { group: 'Positions', positions: true },
    { group: 'What a movement asks for', positions: false },
  ].map(({ group, positions }) => ({
    group,
    items: traits
      .filter(({ isPosition }) => isPosition === positions)
      .map(({ code, name }) => ({ value: code, label: name })),
  }));
