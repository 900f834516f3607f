import { Button, Group, NumberInput, Select, Text, TextInput, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { catalogueQueries } from '@/api/catalogue';
import { useMe } from '@/api/session';
import { type NewRate, staffQueries, useAddRate, useWithdrawRate } from '@/api/staff';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { PayView } from '@/components/staff/pay-view';
import staff from '@/components/staff/staff.module.css';
import { perWords } from '@/components/staff/words';
import { Asked, Empty, Refused } from '@/components/states/asked';
import { fullDate } from '@/components/time/days';

export function PayPage() {
  return (
    <>
      <Title mb="md">Pay</Title>
      <PayView />
      <Title order={2} mt="xl">
        Rates
      </Title>
      <Text c="dimmed" maw="44rem">
        The most particular rate on a session&apos;s date counts: for one instructor and class, for
        an instructor, for a class, for everybody; of those the newest. An hourly rate is rounded on
        each line, half away from zero. A rate is never rewritten: withdraw a wrong one and enter
        another.
      </Text>
      <Rates />
      <AddRate />
    </>
  );
}

function Rates() {
  const rates = useQuery(staffQueries.rates());
  const withdraw = useWithdrawRate();
  return (
    <Asked query={rates}>
      {(list) =>
        list.length === 0 ? (
          <Empty title="No rates yet">Sessions without one are listed, and in no total.</Empty>
        ) : (
          <>
            <ul className={staff.rows}>
              {list.map((rate) => (
                <li key={rate.id}>
                  <span style={{ flex: '1 1 20rem' }}>
                    {rate.instructorName ?? 'Everybody'}, {rate.className ?? 'every class'}:{' '}
                    {rate.amountText} {rate.currency} {rate.per !== null && perWords[rate.per]}
                    {rate.heads === 'checkedIn' && ' checked in'}
                    {rate.heads === 'seatsTaken' && ' with a seat'}, from {fullDate(rate.from)}
                  </span>
                  {rate.withdrawnAt == null ? (
                    <Button
                      size="sm"
                      variant="default"
                      onClick={() => withdraw.mutate(rate.id)}
                      aria-label={`Withdraw the rate of ${rate.amountText} for ${rate.instructorName ?? 'everybody'}, ${rate.className ?? 'every class'}`}
                    >
                      Withdraw
                    </Button>
                  ) : (
                    <Text c="dimmed">Withdrawn</Text>
                  )}
                </li>
              ))}
            </ul>
            <Refused error={withdraw.error} />
          </>
        )
      }
    </Asked>
  );
}

interface RateDraft {
  instructorId: string | null;
  classId: string | null;
  per: string;
  heads: string;
  amount: number | string;
  currency: string;
  from: string | null;
}

function AddRate() {
  const { today } = useMe();
  const instructors = useQuery(staffQueries.instructors()).data ?? [];
  const offered = useQuery(catalogueQueries.classes()).data ?? [];
  const add = useAddRate();
  const form = useForm<RateDraft>({
    initialValues: {
      instructorId: null,
      classId: null,
      per: 'session',
      heads: 'checkedIn',
      amount: '',
      currency: 'EUR',
      from: today,
    },
    validate: {
      amount: (amount) =>
        amount === '' ? 'How much, in the smallest unit of the currency?' : null,
      from: (day) => (day === null ? 'From which day on?' : null),
    },
  });
  return (
    <form
      onSubmit={form.onSubmit(({ instructorId, classId, per, heads, amount, currency, from }) => {
        if (from === null) return;
        add.mutate(
          {
            instructorId: instructorId === null ? null : Number(instructorId),
            classId: classId === null ? null : Number(classId),
            per: per as NewRate['per'],
            heads: per === 'head' ? (heads as NewRate['heads']) : null,
            amount: Number(amount),
            currency: currency.trim().toUpperCase(),
            from,
          },
          { onSuccess: () => form.setFieldValue('amount', ''), onError: showRefusal(form) },
        );
      })}
    >
      <Title order={3} mt="lg">
        Enter a rate
      </Title>
      <Group align="flex-start" mt="sm">
        <Select
          label="Instructor"
          placeholder="Everybody"
          clearable
          clearButtonProps={{ 'aria-label': 'Everybody' }}
          data={instructors.map(({ id, name }) => ({ value: String(id), label: name }))}
          {...form.getInputProps('instructorId')}
        />
        <Select
          label="Class"
          placeholder="Every class"
          clearable
          clearButtonProps={{ 'aria-label': 'Every class' }}
          data={offered.map(({ id, name }) => ({ value: String(id), label: name }))}
          {...form.getInputProps('classId')}
        />
        <Select
          label="Paid"
          allowDeselect={false}
          data={Object.entries(perWords).map(([value, label]) => ({ value, label }))}
          {...form.getInputProps('per')}
        />
        {form.values.per === 'head' && (
          <Select
            label="Heads are people"
            allowDeselect={false}
            data={[
              { value: 'checkedIn', label: 'checked in' },
              { value: 'seatsTaken', label: 'with a seat, whether they came or not' },
            ]}
            {...form.getInputProps('heads')}
          />
        )}
        <NumberInput
          label="Amount"
          description="In the smallest unit: 2500 is 25.00 EUR"
          min={0}
          allowDecimal={false}
          {...form.getInputProps('amount')}
        />
        <TextInput label="Currency" maxLength={3} w="6rem" {...form.getInputProps('currency')} />
        <DayInput label="From" {...form.getInputProps('from')} />
      </Group>
      <Refused error={add.error} />
      <Button type="submit" mt="md" loading={add.isPending}>
        Enter the rate
      </Button>
    </form>
  );
}
