import { Text, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useGiveAccount } from '@/api/accounts';
import type { ClientCard } from '@/api/types';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';

/** A way for her to sign in: her own e-mail address, and a first password the desk hands over. */
export function GiveAccount({ her, onDone }: { her: ClientCard; onDone: () => void }) {
  const form = useForm({ initialValues: { password: '' } });
  const give = useGiveAccount(her.id);
  return (
    <form
      onSubmit={form.onSubmit(({ password }) =>
        give.mutate(password, {
          onSuccess: () => {
            tell(`${her.called} can sign in now with ${her.email}.`);
            onDone();
          },
          onError: showRefusal(form),
        }),
      )}
    >
      <Refused error={give.error} />
      <Text mb="sm">
        {her.email === ''
          ? 'She signs in with her e-mail address: enter it under “Details” first.'
          : `She signs in with ${her.email}.`}
      </Text>
      <TextInput
        label="First password"
        description="At least 10 characters. Hand it over in person; she changes it after signing in."
        autoComplete="off"
        required
        data-autofocus
        {...form.getInputProps('password')}
      />
      <SubmitRow
        label="Make the account"
        busy={give.isPending}
        disabled={her.email === ''}
        onCancel={onDone}
      />
    </form>
  );
}
