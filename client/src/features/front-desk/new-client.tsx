import {
  Group,
  NumberInput,
  Radio,
  SegmentedControl,
  Select,
  SimpleGrid,
  Stack,
  Text,
  TextInput,
  Title,
} from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { useAddClient } from '@/api/clients';
import { useMe } from '@/api/session';
import type { BirthMode } from '@/api/types';
import { emptyDraft, evidenceOf } from '@/components/forms/dating-draft';
import { DatingFields } from '@/components/forms/dating-fields';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import classes from './desk.module.css';

type Where = 'pregnant' | 'born';

export function NewClientPage() {
  const { today } = useMe();
  const navigate = useNavigate();
  const { data: locations = [] } = useQuery(catalogueQueries.locations());
  const add = useAddClient();
  const [where, setWhere] = useState<Where>('pregnant');
  const [dating, setDating] = useState(emptyDraft);
  const form = useForm({
    initialValues: {
      name: '',
      called: '',
      phone: '',
      email: '',
      emergencyName: '',
      emergencyPhone: '',
      homeLocationId: '',
      babies: 1 as number | string,
      bornOn: null as string | null,
      birthMode: null as BirthMode | null,
    },
    validate: {
      name: (name) => (name.trim() === '' ? 'What is her name?' : null),
      homeLocationId: (id) => (id === '' ? 'Where does she mostly come?' : null),
    },
  });

  const submit = form.onSubmit(({ bornOn, birthMode, babies, homeLocationId, ...contact }) =>
    add.mutate(
      {
        ...contact,
        called: contact.called.trim() === '' ? (contact.name.split(' ')[0] ?? '') : contact.called,
        homeLocationId: Number(homeLocationId),
        babies: Number(babies),
        dating: where === 'pregnant' ? evidenceOf(dating) : null,
        bornOn: where === 'born' ? bornOn : null,
        birthMode: where === 'born' ? birthMode : null,
      },
      {
        onSuccess: ({ id }) => {
          tell(`${contact.name} is added.`);
          void navigate({ to: '/desk/clients/$clientId', params: { clientId: String(id) } });
        },
        onError: showRefusal(form),
      },
    ),
  );

  return (
    <form onSubmit={submit} className={classes.narrow} noValidate>
      <Title mb="md">New client</Title>
      <Stack gap="lg">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <TextInput
            label="Full name"
            withAsterisk
            data-autofocus
            {...form.getInputProps('name')}
          />
          <TextInput
            label="What she likes to be called"
            placeholder={form.values.name.split(' ')[0]}
            {...form.getInputProps('called')}
          />
          <TextInput label="Phone" type="tel" {...form.getInputProps('phone')} />
          <TextInput label="E-mail" type="email" {...form.getInputProps('email')} />
          <TextInput label="In an emergency, call" {...form.getInputProps('emergencyName')} />
          <TextInput label="Emergency phone" type="tel" {...form.getInputProps('emergencyPhone')} />
          <Select
            label="Home location"
            withAsterisk
            data={locations.map(({ id, name }) => ({ value: String(id), label: name }))}
            {...form.getInputProps('homeLocationId')}
          />
          <NumberInput
            label="Babies expected or born"
            min={1}
            max={5}
            {...form.getInputProps('babies')}
          />
        </SimpleGrid>
        <div>
          <Title order={2} mb="xs" id="where">
            Where she is
          </Title>
          <SegmentedControl
            aria-labelledby="where"
            value={where}
            onChange={setWhere}
            data={[
              { value: 'pregnant', label: 'Pregnant' },
              { value: 'born', label: 'After the birth' },
            ]}
          />
        </div>
        {where === 'pregnant' ? (
          <DatingFields draft={dating} onChange={setDating} today={today} errors={form.errors} />
        ) : (
          <Group align="flex-start" gap="xl">
            <DayInput label="Day of the birth" maxDate={today} {...form.getInputProps('bornOn')} />
            <Radio.Group label="How" {...form.getInputProps('birthMode')}>
              <Stack gap="xs" mt={4}>
                <Radio value="vaginal" label="Vaginal" />
                <Radio value="assisted" label="Assisted" />
                <Radio value="caesarean" label="Caesarean" />
                <Radio value="unknown" label="Not known" />
              </Stack>
            </Radio.Group>
          </Group>
        )}
        <Text size="sm" c="dimmed">
          Her health is not asked here. She answers her screening herself; you note its outcome on
          her card.
        </Text>
        <Refused error={add.error} />
      </Stack>
      <SubmitRow label="Add client" busy={add.isPending} />
    </form>
  );
}
