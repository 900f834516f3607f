import { Button, Checkbox, Group, Modal, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { draftQueries, usePublishDraft } from '@/api/drafts';
import type { ChangesPreview, Draft, DraftSession } from '@/api/types';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { AgainstIt } from './hand';
import { spotOf } from './place';
import type { Named } from './words';

interface Props {
  draft: Draft;
  named: Named;
  onDone: (words: string) => void;
  onClose: () => void;
}

/** What publishing would bring about, for whom; then it is done, all of it at once. */
export function Publish({ draft, named, onDone, onClose }: Props) {
  const [anyway, setAnyway] = useState(false);
  const { id, version, name } = draft.draft;
  const preview = useQuery(draftQueries.consequences(id, version));
  const publish = usePublishDraft(id);
  const hard = preview.data?.conflicts.some(({ isHard }) => isHard === true) ?? true;
  const soft = preview.data?.conflicts.some(({ isHard }) => isHard !== true) ?? false;
  const nothing =
    preview.data !== undefined &&
    preview.data.added + preview.data.changed + preview.data.calledOff === 0;

  return (
    <Modal opened onClose={onClose} title={`Publish: ${name}`} size="xl">
      <Stack>
        <Asked query={preview} waiting={<Lines count={3} />}>
          {(seen) => (
            <>
              <Text>
                {nothing ? 'Nothing in this draft differs from the timetable.' : countsOf(seen)}
              </Text>
              {seen.conflicts.length > 0 && <AgainstIt conflicts={seen.conflicts} />}
              <Changes sessions={draft.sessions} named={named} />
              <ForPeople seen={seen} />
              {hard && (
                <Text fw={600} c="var(--stop)">
                  Mend what cannot be, then publish.
                </Text>
              )}
              {!hard && soft && (
                <Checkbox
                  label="Publish it all the same: I have thought about what is named above"
                  checked={anyway}
                  onChange={(event) => setAnyway(event.currentTarget.checked)}
                />
              )}
            </>
          )}
        </Asked>
        <Refused error={publish.error} />
        <Group>
          <Button
            disabled={hard || nothing || (soft && !anyway)}
            loading={publish.isPending}
            onClick={() =>
              publish.mutate(
                { version, anyway },
                {
                  onSuccess: (made) =>
                    onDone(
                      `Published: ${made.added} added, ${made.changed} changed, ${made.calledOff} called off; ${people(made.told)} told.`,
                    ),
                },
              )
            }
          >
            Publish now
          </Button>
          <Button variant="default" onClick={onClose} disabled={publish.isPending}>
            Not yet
          </Button>
        </Group>
      </Stack>
    </Modal>
  );
}

const people = (count: number) => (count === 1 ? '1 person is' : `${count} people are`);

const countsOf = ({ added, changed, calledOff }: ChangesPreview) =>
  `${added} added, ${changed} changed, ${calledOff} called off.`;

/** Every session that would become another, and what exactly. */
function Changes({ sessions, named }: { sessions: readonly DraftSession[]; named: Named }) {
  const changed = sessions.filter(
    ({ isChanged, isHeld, sessionId }) => isChanged && (isHeld || sessionId != null),
  );
  if (changed.length === 0) return null;
  return (
    <section>
      <Title order={3}>What changes</Title>
      <ul>
        {changed.map((session) => {
          const now = spotOf(session);
          return (
            <li key={session.id}>
              {session.was == null ? (
                <>
                  <b>New:</b> {named.session(now)}
                </>
              ) : (
                <>
                  <b>
                    {named.className(now)}, {named.day(session.was)}, {session.was.startsLocal}:
                  </b>{' '}
                  {named.changes(session.was, now).join('; ')}
                </>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function ForPeople({ seen }: { seen: ChangesPreview }) {
  return (
    <section>
      <Title order={3}>For those who have booked</Title>
      {seen.consequences.length === 0 ? (
        <Text>Nobody has a seat in a session that changes for them.</Text>
      ) : (
        <ul>
          {seen.consequences.map(({ sessionId, words, told, letGo, noLongerSuits }) => (
            <li key={sessionId}>
              {words}{' '}
              <b>
                {people(told)} told
                {letGo > 0 && `, ${letGo} of them let go without charge`}
                {noLongerSuits > 0 && `; on its new date it does not suit ${noLongerSuits}`}.
              </b>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
