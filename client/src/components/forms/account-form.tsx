import { Stack, Text, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useAddAccount } from '@/api/accounts';
import type { Role } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { showRefusal } from './refusals';
import { SubmitRow } from './submit-row';

interface Props {
  name: string;
  email: string;
  as: Role;
  instructorId?: number;
  onDone: () => void;
}

/** A way to sign in for one person, with a first password she changes herself. */
export function AccountForm({ name, email, as, instructorId, onDone }: Props) {
  const form = useForm({ initialValues: { name, email, password: '' } });
  const add = useAddAccount();
  return (
    <form
      onSubmit={form.onSubmit((values) =>
        add.mutate(
          {
            ...values,
            roles: [as],
            clientId: null,
            instructorId: instructorId ?? null,
          },
          {
            onSuccess: () => {
              tell(`${values.name} can sign in now.`);
              onDone();
            },
            onError: showRefusal(form),
          },
        ),
      )}
    >
      <Stack>
        <Refused error={add.error} />
        <TextInput label="Name" required {...form.getInputProps('name')} />
        <TextInput label="E-mail" type="email" required {...form.getInputProps('email')} />
        <TextInput
          label="First password"
          description="At least 10 characters. Hand it over in person; it is changed after signing in."
          autoComplete="off"
          required
          {...form.getInputProps('password')}
        />
        <Text size="sm" c="dimmed">
          The password is not shown again.
        </Text>
      </Stack>
      <SubmitRow label="Make the account" busy={add.isPending} onCancel={onDone} />
    </form>
  );
}
