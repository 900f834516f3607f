import { Alert, Button, Group, Loader, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { assignmentQueries, useDraftOfAssignment, useEndAssignment } from '@/api/assignments';
import type { AssignmentProgress, AssignmentResult, AssignmentRun } from '@/api/types';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { GoButton } from '@/components/states/go';
import { tell } from '@/components/states/told';
import { Comparison } from './comparison';
import { aimWords, count, endWords, scopeWords, spanWords, statusWords } from './words';

interface Props {
  id: number;
  onLeave: () => void;
}

export function OneAssignment({ id, onLeave }: Props) {
  const one = useQuery(assignmentQueries.byId(id));
  return (
    <Asked query={one} waiting={<Lines count={3} height={80} />}>
      {({ run, progress, result }) => (
        <>
          <Title order={2}>{spanWords(run.asked)}</Title>
          <Text c="dimmed" mb="md">
            {scopeWords[run.asked.change]} may change.
          </Text>
          {run.status === 'running' ? (
            <Going run={run} progress={progress ?? null} />
          ) : result == null ? (
            <>
              <Alert color="amber" variant="light" role="status" mb="md">
                This one {statusWords(run)}. Nothing was kept of it, and nothing was changed by it.
              </Alert>
              <Button onClick={onLeave}>Ask anew</Button>
            </>
          ) : (
            <Found run={run} result={result} onLeave={onLeave} />
          )}
        </>
      )}
    </Asked>
  );
}

function Going({ run, progress }: { run: AssignmentRun; progress: AssignmentProgress | null }) {
  const end = useEndAssignment();
  return (
    <>
      <Group gap="sm" mb="xs" wrap="nowrap">
        <Loader size="sm" aria-hidden />
        <Text fw={600} role="status">
          {progress === null ? 'Reading the plan as it stands' : aimWords[progress.aim]}
        </Text>
      </Group>
      <Text>
        {count(run.seconds, 'second')} of at most {run.asked.seconds ?? 120}
        {progress !== null && progress.parts > 1 && `, part ${progress.part} of ${progress.parts}`}
      </Text>
      {progress !== null && (
        <Text>
          {progress.unstaffed === 0
            ? 'Every session has somebody so far.'
            : `${count(progress.unstaffed, 'session')} with nobody so far; ${progress.unstaffedAtLeast} at least will stay so.`}
        </Text>
      )}
      <Refused error={end.error} />
      <Group mt="md">
        <Button variant="default" loading={end.isPending} onClick={() => end.mutate(run.id)}>
          Cancel, and keep the best so far
        </Button>
      </Group>
    </>
  );
}

function Found({
  run,
  result,
  onLeave,
}: {
  run: AssignmentRun;
  result: AssignmentResult;
  onLeave: () => void;
}) {
  const end = useEndAssignment();
  const draft = useDraftOfAssignment();
  const isOpen = !run.discarded && run.draftId == null;
  return (
    <>
      <Text>
        {statusWords(run)[0]?.toUpperCase()}
        {statusWords(run).slice(1)}, after {count(run.seconds, 'second')}. {endWords(run, result)}
      </Text>
      <Refused error={draft.error ?? end.error} />
      <Group my="md">
        {isOpen && (
          <>
            <Button
              loading={draft.isPending}
              onClick={() =>
                draft.mutate(run.id, {
                  onSuccess: ({ leftAsTheyAre }) =>
                    tell(
                      leftAsTheyAre === 0
                        ? 'The draft is made. Nothing is published yet.'
                        : `The draft is made. ${count(leftAsTheyAre, 'session')} changed meanwhile and stayed as they are.`,
                    ),
                })
              }
            >
              Make a draft of it
            </Button>
            <Button
              variant="default"
              loading={end.isPending}
              onClick={() => end.mutate(run.id, { onSuccess: onLeave })}
            >
              Put it aside
            </Button>
          </>
        )}
        {run.draftId != null && (
          <GoButton to="/studio/drafts/$draftId" params={{ draftId: String(run.draftId) }}>
            To the draft
          </GoButton>
        )}
        <Button variant="default" onClick={onLeave}>
          {isOpen ? 'Decide later' : 'Ask anew'}
        </Button>
      </Group>
      <Comparison result={result} />
    </>
  );
}
