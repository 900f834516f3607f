import { Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useFileLetter } from '@/api/clients';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';

interface Props {
  clientId: number;
  today: string;
  onDone: () => void;
}

/** Who wrote it and how long it holds; what it says is not kept here. */
export function LetterForm({ clientId, today, onDone }: Props) {
  const form = useForm<{ issuedBy: string; issuedOn: string | null; expiresOn: string | null }>({
    initialValues: { issuedBy: '', issuedOn: today, expiresOn: null },
    validate: {
      issuedOn: (day) => (day === null ? 'When was it written?' : null),
      expiresOn: (day) => (day === null ? 'Until when does it hold?' : null),
    },
  });
  const file = useFileLetter(clientId);
  return (
    <form
      onSubmit={form.onSubmit(({ issuedBy, issuedOn, expiresOn }) => {
        if (issuedOn === null || expiresOn === null) return;
        file.mutate(
          { issuedBy, issuedOn, expiresOn },
          {
            onSuccess: () => {
              tell('The letter is filed.');
              onDone();
            },
            onError: showRefusal(form),
          },
        );
      })}
    >
      <Stack>
        <Refused error={file.error} />
        <TextInput label="Written by" required {...form.getInputProps('issuedBy')} />
        <DayInput label="Written on" maxDate={today} required {...form.getInputProps('issuedOn')} />
        <DayInput
          label="Holds until"
          description="The last day it covers, as written. The studio’s own limit may end it sooner."
          required
          {...form.getInputProps('expiresOn')}
        />
      </Stack>
      <SubmitRow label="File the letter" busy={file.isPending} onCancel={onDone} />
    </form>
  );
}
