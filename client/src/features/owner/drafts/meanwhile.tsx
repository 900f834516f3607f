import { Alert, Button, Group, Stack, Text } from '@mantine/core';
import { useDecide } from '@/api/drafts';
import type { Draft } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { spotOf } from './place';
import type { Named } from './words';

/** Sessions that somebody changed in the timetable since they were copied: the owner says which of the two holds. */
export function Meanwhile({ draft, named }: { draft: Draft; named: Named }) {
  const decide = useDecide(draft.draft.id);
  const rows = draft.sessions.flatMap((row) =>
    row.meanwhile == null
      ? []
      : [{ row, theirs: { ...row.meanwhile, id: row.id, classId: row.classId } }],
  );
  if (rows.length === 0) return null;
  return (
    <Alert
      color="amber"
      variant="light"
      mb="md"
      title={
        rows.length === 1
          ? 'A session was changed in the timetable since it was copied'
          : `${rows.length} sessions were changed in the timetable since they were copied`
      }
    >
      <Stack gap="sm">
        <Refused error={decide.error} />
        {rows.map(({ row, theirs }) => {
          return (
            <div key={row.id}>
              <Text fw={600}>In the timetable now: {stands(named, theirs)}</Text>
              <Text>In this draft: {stands(named, spotOf(row))}</Text>
              <Group gap="xs" mt={4}>
                {(['theirs', 'mine'] as const).map((keep) => (
                  <Button
                    key={keep}
                    size="xs"
                    variant="default"
                    disabled={decide.isPending}
                    onClick={() => decide.mutate({ row: row.id, keep })}
                  >
                    {keep === 'theirs' ? 'As the timetable has it' : 'As this draft has it'}
                  </Button>
                ))}
              </Group>
            </div>
          );
        })}
      </Stack>
    </Alert>
  );
}

const stands = (named: Named, spot: Parameters<Named['session']>[0]) =>
  `${named.session(spot)}, ${spot.seats} seats${spot.isHeld ? '' : ', called off'}`;
