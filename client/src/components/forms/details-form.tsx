import { Checkbox, SimpleGrid, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useChangeDetails } from '@/api/clients';
import type { ClientCard } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { DayInput } from './day-input';
import { showRefusal } from './refusals';
import { SubmitRow } from './submit-row';

interface Props {
  her: ClientCard;
  onDone?: () => void;
  /** Only she herself decides what is shared of her health. */
  herself?: boolean;
}

export function DetailsForm({ her, onDone, herself = false }: Props) {
  const form = useForm({
    initialValues: {
      called: her.called,
      name: her.name,
      phone: her.phone,
      email: her.email,
      emergencyName: her.emergencyName,
      emergencyPhone: her.emergencyPhone,
      sharesConditions: her.sharesConditions,
      bornOn: her.bornOn ?? null,
    },
  });
  const change = useChangeDetails(her.id);
  return (
    <form
      onSubmit={form.onSubmit(({ sharesConditions, bornOn, ...values }) =>
        change.mutate(herself ? { ...values, ...hers(her, sharesConditions, bornOn) } : values, {
          onSuccess: () => {
            tell('Saved.');
            onDone?.();
          },
          onError: showRefusal(form),
        }),
      )}
    >
      <Stack>
        <Refused error={change.error} />
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <TextInput
            label={herself ? 'What you like to be called' : 'What she likes to be called'}
            autoComplete={herself ? 'nickname' : 'off'}
            required
            {...form.getInputProps('called')}
          />
          <TextInput
            label="Full name"
            autoComplete={herself ? 'name' : 'off'}
            required
            {...form.getInputProps('name')}
          />
          <TextInput
            label="Phone"
            type="tel"
            autoComplete={herself ? 'tel' : 'off'}
            {...form.getInputProps('phone')}
          />
          <TextInput
            label="E-mail"
            type="email"
            autoComplete={herself ? 'email' : 'off'}
            {...form.getInputProps('email')}
          />
          <TextInput
            label="In an emergency, call"
            autoComplete="off"
            {...form.getInputProps('emergencyName')}
          />
          <TextInput
            label="Their phone"
            type="tel"
            autoComplete="off"
            {...form.getInputProps('emergencyPhone')}
          />
        </SimpleGrid>
        {herself && (
          <DayInput
            label="My date of birth"
            description="Only for the heart rate that suits you. Leave it empty if you like; the desk does not see it."
            maxLevel="decade"
            {...form.getInputProps('bornOn')}
          />
        )}
        {herself && (
          <Checkbox
            label="My instructors may see my conditions by name"
            description="Without this they see only what to do differently, never why."
            {...form.getInputProps('sharesConditions', { type: 'checkbox' })}
          />
        )}
      </Stack>
      <SubmitRow label="Save" busy={change.isPending} onCancel={onDone} />
    </form>
  );
}

/** What only she herself decides: the day is sent when it is another one, and forgotten when it is taken away. */
const hers = (her: ClientCard, sharesConditions: boolean, bornOn: string | null) =>
  bornOn === (her.bornOn ?? null)
    ? { sharesConditions }
    : { sharesConditions, bornOn, forgetBornOn: bornOn === null };
