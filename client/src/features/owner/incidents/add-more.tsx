import { Stack, Textarea } from '@mantine/core';
import { useState } from 'react';
import { useAddToIncident } from '@/api/incidents';
import { Problem } from '@/api/problem';
import type { Incident } from '@/api/types';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';

/** What became known later. It stands under the entry; the entry itself stays as it was written. */
export function AddMore({ entry, onDone }: { entry: Incident; onDone: () => void }) {
  const add = useAddToIncident(entry.id);
  const [happened, setHappened] = useState('');
  const [done, setDone] = useState('');
  const fields = add.error instanceof Problem ? add.error.fields : {};
  return (
    <form
      aria-label={`Add to the entry about ${entry.name}`}
      onSubmit={(event) => {
        event.preventDefault();
        void add.mutateAsync({ happened: happened.trim(), done: done.trim() }).then(
          () => {
            tell('Added. The entry itself stays as it was.');
            onDone();
          },
          () => undefined,
        );
      }}
    >
      <Stack gap="sm" mt="sm">
        <Refused error={add.error} />
        <Textarea
          label="What became known"
          autosize
          minRows={2}
          maxLength={2000}
          required
          data-autofocus
          value={happened}
          onChange={(event) => setHappened(event.currentTarget.value)}
          error={fields.happened}
        />
        <Textarea
          label="What was done since"
          autosize
          minRows={1}
          maxLength={2000}
          value={done}
          onChange={(event) => setDone(event.currentTarget.value)}
          error={fields.done}
        />
      </Stack>
      <SubmitRow
        label="Add it"
        busy={add.isPending}
        disabled={happened.trim() === ''}
        onCancel={onDone}
      />
    </form>
  );
}
