import { Alert, Button, Group, Table, Text, Title } from '@mantine/core';
import { usePlanCover, useSettleCover } from '@/api/cover';
import type { CoverStep } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { shortDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { Needs } from '@/components/verdict/mark';
import classes from '@/components/cover/cover.module.css';

/** Several sessions worked out together: a proposal as a table, accepted whole or put away. */
export function Together({ sessions }: { sessions: readonly number[] }) {
  const plan = usePlanCover();
  const settle = useSettleCover();
  const steps = plan.data?.steps ?? [];
  const given = steps.filter((step) => step.by != null);
  const accepts = given.some((step) => (step.by?.against.length ?? 0) > 0);
  return (
    <section aria-label="Several together" aria-live="polite">
      <Group mb="md">
        <Button
          loading={plan.isPending}
          disabled={sessions.length === 0}
          onClick={() => {
            settle.reset();
            plan.mutate(sessions);
          }}
        >
          {sessions.length === 1 ? 'Work out 1 session' : `Work out ${sessions.length} together`}
        </Button>
      </Group>
      <Refused error={plan.error} />
      {plan.data !== undefined && (
        <Alert color="leaf" variant="light" mb="lg">
          <Title order={2} size="h3" mb="xs">
            Proposal: {given.length} of {steps.length} covered
          </Title>
          {!plan.data.isBest && (
            <Text mb="xs">The search was ended early: there may be a better one.</Text>
          )}
          <Table>
            <Table.Thead>
              <Table.Tr>
                <Table.Th scope="col">Session</Table.Th>
                <Table.Th scope="col">Who</Table.Th>
                <Table.Th scope="col">Why</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {steps.map((step) => (
                <Row key={step.session.id} step={step} />
              ))}
            </Table.Tbody>
          </Table>
          <Refused error={settle.error} />
          <Group mt="md">
            <Button
              loading={settle.isPending}
              disabled={given.length === 0}
              onClick={() =>
                settle.mutate(
                  {
                    covers: steps.flatMap(({ session, by }) =>
                      by == null ? [] : [{ sessionId: session.id, instructorId: by.instructorId }],
                    ),
                    anyway: accepts,
                  },
                  {
                    onSuccess: ({ settled }) => {
                      plan.reset();
                      tell(
                        settled === 1
                          ? '1 session has somebody. Everybody is told.'
                          : `${settled} sessions have somebody. Everybody is told.`,
                      );
                    },
                  },
                )
              }
            >
              {accepts ? 'Accept what is marked, and settle all' : 'Settle all'}
            </Button>
            <Button variant="default" onClick={() => plan.reset()}>
              Put it away
            </Button>
          </Group>
        </Alert>
      )}
    </section>
  );
}

function Row({ step: { session, by, whyNobody } }: { step: CoverStep }) {
  return (
    <Table.Tr>
      <Table.Td>
        <strong>{session.className}</strong>
        <Text size="sm">
          {shortDay(session.on)}, <SessionTime session={session} />, {session.locationName}
        </Text>
      </Table.Td>
      <Table.Td>{by?.name ?? <Needs tone="stop">Nobody can</Needs>}</Table.Td>
      <Table.Td>
        {by?.against.map((words) => (
          <Needs key={words} tone="mind">
            {words}
          </Needs>
        ))}
        <ul className={classes.reasons}>
          {by != null
            ? by.reasons.map((words) => <li key={words}>{words}</li>)
            : whyNobody.map((her) => (
                <li key={her.instructorId}>
                  {her.against.length > 0
                    ? her.against.join(' ')
                    : `${her.name}: not that day, as she said.`}
                </li>
              ))}
        </ul>
      </Table.Td>
    </Table.Tr>
  );
}
