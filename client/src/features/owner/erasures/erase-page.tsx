import { Alert, Button, Group, Text, TextInput, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { Problem } from '@/api/problem';
import { erasureQueries, useErase } from '@/api/records';
import type { ErasurePlan } from '@/api/types';
import { showRefusal } from '@/components/forms/refusals';
import { PlanWords } from '@/components/record/erasure-plan';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { tell } from '@/components/states/told';
import { momentWords } from '@/components/time/zone';

const route = getRouteApi('/inside/studio/people/$clientId/erase');

/** What an erasure would do, read first; then carried out by typing her name. */
export function ErasePage() {
  const { clientId } = route.useParams();
  const plan = useQuery(erasureQueries.plan(Number(clientId)));
  return (
    <>
      <Title>Erase what is held about her</Title>
      <Go to="/studio/people/$clientId" params={{ clientId }}>
        Back to her page
      </Go>
      <Asked query={plan} waiting={<Lines count={6} />}>
        {(data) => (
          <>
            <Text mt="md">
              {data.askedAt == null
                ? `${data.name} has not asked for it through her page.`
                : `${data.name} asked for it on ${momentWords(data.askedAt)}${
                    data.askedByHerself ? '' : ', filed at the studio'
                  }.`}
            </Text>
            <PlanWords plan={data} />
            <Confirm clientId={Number(clientId)} plan={data} />
          </>
        )}
      </Asked>
    </>
  );
}

function Confirm({ clientId, plan }: { clientId: number; plan: ErasurePlan }) {
  const navigate = route.useNavigate();
  const erase = useErase(clientId);
  const form = useForm({ initialValues: { name: '' } });
  const inField = erase.error instanceof Problem && erase.error.fields.name !== undefined;
  return (
    <form
      onSubmit={form.onSubmit(({ name }) =>
        erase.mutate(
          { name, seen: plan.seen },
          {
            onSuccess: ({ filesLeft }) => {
              tell(
                filesLeft === 0
                  ? 'Erased.'
                  : 'Erased. A file could not be deleted yet; it is tried again every few minutes.',
              );
              void navigate({ to: '/studio/erasures' });
            },
            onError: showRefusal(form),
          },
        ),
      )}
    >
      <Alert color="brick" variant="light" mt="lg" maw="46rem" title="This cannot be undone">
        <Text>
          Copies of the data folder made before still hold her data; see the README on backups.
        </Text>
        <TextInput
          mt="sm"
          label="Type her full name"
          description={plan.name}
          autoComplete="off"
          {...form.getInputProps('name')}
        />
        {!inField && <Refused error={erase.error} />}
        <Group mt="md">
          <Button
            type="submit"
            color="brick"
            loading={erase.isPending}
            disabled={form.values.name.trim() === ''}
          >
            Erase for good
          </Button>
        </Group>
      </Alert>
    </form>
  );
}
