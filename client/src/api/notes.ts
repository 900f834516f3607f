import { type QueryClient, useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { api, ok } from './client';
import { clientQueries } from './clients';
import { useConnectionLost } from './connection';
import { type Draft, drafts, useDrafts } from './note-drafts';
import { Problem, wordsOf } from './problem';
import { sessionsQueries } from './sessions';
import type { ClassNote } from './types';

const send = ({ from, sessionId, clientId, text }: Draft): Promise<ClassNote> =>
  from === undefined
    ? ok(
        api.POST('/api/sessions/{sessionId}/notes', {
          params: { path: { sessionId } },
          body: { clientId, text },
        }),
      )
    : ok(
        api.PUT('/api/notes/{noteId}', {
          params: { path: { noteId: from.id } },
          body: { text, version: from.version },
        }),
      );

let busy = false;

/** Sends what is meant to be sent, one after the other; without the server it stays until next time. */
export async function sendDrafts(queries: QueryClient, accountId: number) {
  if (busy) return;
  busy = true;
  try {
    for (;;) {
      const next = Object.values(drafts.all()).find(
        (draft) => draft.sending && draft.accountId === accountId,
      );
      if (next === undefined) return;
      try {
        saved(queries, next, await send(next));
      } catch (refused) {
        if (refused instanceof Problem && refused.status === 0) return;
        // Read anew, so that the next press begins from what stands now.
        await queries.invalidateQueries({
          queryKey: sessionsQueries.notes(next.sessionId).queryKey,
        });
        const now = drafts.of(next);
        if (now !== undefined)
          drafts.put({ ...now, sending: false, from: undefined, refused: wordsOf(refused) });
      }
    }
  } finally {
    busy = false;
  }
}

/** Before somebody signs out: what she has written goes where she meant it to go. */
export async function sendAllDrafts(queries: QueryClient) {
  const all = Object.values(drafts.all()).filter(({ text }) => text.trim() !== '');
  for (const draft of all) drafts.put({ ...draft, sending: true });
  for (const accountId of new Set(all.map((draft) => draft.accountId)))
    await sendDrafts(queries, accountId);
}

function saved(queries: QueryClient, sent: Draft, note: ClassNote) {
  queries.setQueryData(
    sessionsQueries.notes(sent.sessionId).queryKey,
    (old) => old && { ...old, notes: [...old.notes.filter(({ id }) => id !== note.id), note] },
  );
  const now = drafts.of(sent);
  if (now === undefined) return;
  // More may have been written while it was under way.
  if (now.text === sent.text) drafts.drop(sent);
  else drafts.put({ ...now, from: { id: note.id, version: note.version } });
}

/** Sends notes that waited for the connection, and minds those not sent when the tab is closed. */
export function useKeptNotes(accountId: number) {
  const queries = useQueryClient();
  const lost = useConnectionLost();
  const some = Object.keys(useDrafts()).length > 0;
  useEffect(() => {
    if (!lost) void sendDrafts(queries, accountId);
  }, [lost, queries, accountId]);
  useEffect(() => {
    if (!some) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [some]);
}

export function useWithdrawNote() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: ({ id }: ClassNote) =>
      ok(api.DELETE('/api/notes/{noteId}', { params: { path: { noteId: id } } })),
    onSuccess: (_, { clientId }) =>
      Promise.all([
        queries.invalidateQueries({ queryKey: sessionsQueries.all() }),
        queries.invalidateQueries({ queryKey: clientQueries.of(clientId) }),
      ]),
  });
}
