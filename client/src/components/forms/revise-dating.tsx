import { Stack } from '@mantine/core';
import { useState } from 'react';
import { useReviseDating } from '@/api/clients';
import { isGiven } from '@/api/dating';
import { Problem } from '@/api/problem';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { fullDate } from '@/components/time/days';
import { emptyDraft, evidenceOf } from './dating-draft';
import { DatingFields } from './dating-fields';
import { SubmitRow } from './submit-row';

interface Props {
  clientId: number;
  today: string;
  onDone: () => void;
}

/** Adds to what her due date rests on; what was given before is kept. */
export function ReviseDating({ clientId, today, onDone }: Props) {
  const [draft, setDraft] = useState(emptyDraft);
  const revise = useReviseDating(clientId);
  const evidence = evidenceOf(draft);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        revise.mutate(evidence, {
          onSuccess: ({ dueDate, explanation, bookingsNowUnsuitable }) => {
            tell(
              `Due ${fullDate(dueDate)}. ${explanation}${bookingsNowUnsuitable > 0 ? ` ${bookingsNowUnsuitable} bookings no longer suit and are marked.` : ''}`,
            );
            onDone();
          },
        });
      }}
    >
      <Stack>
        <Refused error={revise.error} />
        <DatingFields
          draft={draft}
          onChange={setDraft}
          today={today}
          errors={revise.error instanceof Problem ? revise.error.fields : {}}
        />
      </Stack>
      <SubmitRow
        label="Keep this"
        busy={revise.isPending}
        disabled={!isGiven(evidence)}
        onCancel={onDone}
      />
    </form>
  );
}
