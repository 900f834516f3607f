import { Button, Group, Text, Textarea } from '@mantine/core';
import { IconCheck } from '@tabler/icons-react';
import { useQueryClient } from '@tanstack/react-query';
import { useConnectionLost } from '@/api/connection';
import { type About, type Draft, drafts, useDraft } from '@/api/note-drafts';
import { sendDrafts, useWithdrawNote } from '@/api/notes';
import { useMe } from '@/api/session';
import type { ClassNote } from '@/api/types';
import { tellRefused } from '@/components/states/told';
import classes from './notes.module.css';

const longest = 2000;

interface Props {
  sessionId: number;
  clientId: number;
  called: string;
  /** Beside the name: how far along she is. */
  aside?: string;
  /** The reader's own note as it stands. */
  note?: ClassNote;
}

/** One person's note: written, saved and taken back on its own. The words stay until the server has them. */
export function NoteField({ sessionId, clientId, called, aside, note }: Props) {
  const { accountId } = useMe();
  const about: About = { accountId, sessionId, clientId };
  const draft = useDraft(about);
  const queries = useQueryClient();
  const lost = useConnectionLost();
  const withdraw = useWithdrawNote();
  const text = draft?.text ?? note?.text ?? '';
  const empty = text.trim() === '';
  const beganFrom = note && { id: note.id, version: note.version };

  const write = (words: string) => {
    if (words === (note?.text ?? '')) drafts.drop(about);
    else
      drafts.put({
        ...about,
        text: words,
        from: draft === undefined ? beganFrom : draft.from,
        sending: false,
      });
  };
  const save = () => {
    if (draft === undefined) return;
    drafts.put({
      ...draft,
      from: draft.from ?? beganFrom,
      sending: true,
      refused: undefined,
    });
    void sendDrafts(queries, accountId);
  };

  return (
    <div className={classes.field}>
      <Textarea
        label={aside === undefined ? called : `${called}, ${aside}`}
        autosize
        minRows={2}
        maxRows={8}
        maxLength={longest}
        value={text}
        onChange={(event) => write(event.currentTarget.value)}
        error={draft?.refused}
      />
      {draft?.refused !== undefined && note !== undefined && note.text !== text && (
        <Text size="sm" mt={4}>
          Saved as it stands: “{note.text}”
        </Text>
      )}
      <Group gap="sm" mt={6}>
        <Button
          size="sm"
          disabled={draft === undefined || empty || (draft.sending && lost)}
          loading={draft?.sending === true && !lost}
          onClick={save}
          aria-label={`Save the note about ${called}`}
        >
          Save
        </Button>
        {note !== undefined && (
          <Button
            size="sm"
            variant="default"
            loading={withdraw.isPending}
            onClick={() =>
              void withdraw.mutateAsync(note).then(() => drafts.drop(about), tellRefused)
            }
            aria-label={`Withdraw the note about ${called}`}
          >
            Withdraw
          </Button>
        )}
        <State draft={draft} note={note} lost={lost} empty={empty} />
      </Group>
    </div>
  );
}

interface StateProps {
  draft?: Draft;
  note?: ClassNote;
  lost: boolean;
  empty: boolean;
}

function State({ draft, note, lost, empty }: StateProps) {
  return (
    <Text
      size="sm"
      role="status"
      className={classes.state}
      data-open={draft !== undefined || undefined}
    >
      {draft === undefined ? (
        note === undefined ? (
          ''
        ) : (
          <>
            <IconCheck size={16} stroke={2.5} aria-hidden /> Saved
          </>
        )
      ) : draft.sending ? (
        lost ? (
          'Not sent yet: kept on this device until the connection is back.'
        ) : (
          'Saving'
        )
      ) : empty ? (
        'A note has words. To take it back, withdraw it.'
      ) : (
        'Not saved yet'
      )}
    </Text>
  );
}
