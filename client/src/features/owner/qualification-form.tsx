import { Autocomplete, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useAddQualification } from '@/api/staff';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';

interface FormProps {
  instructorId: number;
  today: string;
  kinds: string[];
  onDone: () => void;
}

export function QualificationForm({ instructorId, today, kinds, onDone }: FormProps) {
  const form = useForm<{ kind: string; issuedOn: string | null; expiresOn: string | null }>({
    initialValues: { kind: '', issuedOn: today, expiresOn: null },
    validate: {
      kind: (kind) => (kind.trim() === '' ? 'Which qualification?' : null),
      expiresOn: (day) => (day === null ? 'Until when is it valid?' : null),
    },
  });
  const add = useAddQualification(instructorId);
  return (
    <form
      onSubmit={form.onSubmit(({ kind, issuedOn, expiresOn }) => {
        if (issuedOn === null || expiresOn === null) return;
        add.mutate(
          { kind, issuedOn, expiresOn },
          { onSuccess: onDone, onError: showRefusal(form) },
        );
      })}
    >
      <Stack>
        <Refused error={add.error} />
        <Autocomplete label="Qualification" data={kinds} {...form.getInputProps('kind')} />
        <DayInput label="Issued on" {...form.getInputProps('issuedOn')} />
        <DayInput label="Valid until" {...form.getInputProps('expiresOn')} />
      </Stack>
      <SubmitRow label="Add it" busy={add.isPending} onCancel={onDone} />
    </form>
  );
}
