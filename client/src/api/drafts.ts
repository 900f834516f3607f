import { queryOptions, skipToken, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { sessionsQueries } from './sessions';
import type { Draft, DraftSession } from './types';

/** A session of a draft as it should stand; without an id it is a new one. */
export type WantedSession = Pick<
  DraftSession,
  'classId' | 'roomId' | 'on' | 'startsLocal' | 'minutes' | 'seats' | 'isHeld'
> & { id?: number | null; instructorId?: number | null };

export const draftQueries = {
  all: () => ['drafts'] as const,
  list: () =>
    queryOptions({
      queryKey: [...draftQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/drafts')),
    }),
  one: (draftId: number) =>
    queryOptions({
      queryKey: [...draftQueries.all(), draftId] as const,
      queryFn: () => ok(api.GET('/api/drafts/{draftId}', { params: { path: { draftId } } })),
    }),
  /** What would stand against a session there; asked while it is being moved. */
  check: (draftId: number, version: number, session: WantedSession | null) =>
    queryOptions({
      queryKey: [...draftQueries.all(), draftId, 'check', version, session] as const,
      staleTime: 30_000,
      retry: false,
      queryFn:
        session === null
          ? skipToken
          : ({ signal }) =>
              ok(
                api.POST('/api/drafts/{draftId}/check', {
                  params: { path: { draftId } },
                  body: { session },
                  signal,
                }),
              ),
    }),
  consequences: (draftId: number, version: number) =>
    queryOptions({
      queryKey: [...draftQueries.all(), draftId, 'consequences', version] as const,
      queryFn: () =>
        ok(api.GET('/api/drafts/{draftId}/consequences', { params: { path: { draftId } } })),
    }),
};

/** The timetable as it stands, with what stands against it; stale whenever a session is. */
export const timetableQuery = (from: string, to: string) =>
  queryOptions({
    queryKey: [...sessionsQueries.all(), 'timetable', from, to] as const,
    queryFn: () => ok(api.GET('/api/timetable', { params: { query: { from, to } } })),
  });

export function useMakeDraft() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: { name: string; from: string; to: string }) =>
      ok(api.POST('/api/drafts', { body })),
    onSuccess: () => queries.invalidateQueries({ queryKey: draftQueries.list().queryKey }),
  });
}

export function useDiscardDraft() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (draftId: number) =>
      ok(api.DELETE('/api/drafts/{draftId}', { params: { path: { draftId } } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: draftQueries.list().queryKey }),
  });
}

/** Changes of one draft, one after the other, each made to the version that the one before it left. */
function useDraftStep<Wanted>(
  draftId: number,
  ask: (version: number, wanted: Wanted) => Promise<Draft>,
  meanwhile?: (draft: Draft, wanted: Wanted) => Draft,
) {
  const queries = useQueryClient();
  const { queryKey } = draftQueries.one(draftId);
  return useMutation({
    scope: { id: `draft-${draftId}` },
    mutationFn: (wanted: Wanted) => {
      const now = queries.getQueryData(queryKey);
      return ask(now?.draft.version ?? 0, wanted);
    },
    onMutate: async (wanted) => {
      await queries.cancelQueries({ queryKey, exact: true });
      if (meanwhile !== undefined)
        queries.setQueryData(queryKey, (now) => now && meanwhile(now, wanted));
    },
    onSuccess: (draft) => queries.setQueryData(queryKey, draft),
    // What was refused is taken off the page again, and whatever somebody else did is shown.
    onError: () => queries.invalidateQueries({ queryKey, exact: true }),
  });
}

export const useChangeDraft = (draftId: number) =>
  useDraftStep(
    draftId,
    (version, put: WantedSession[]) =>
      ok(
        api.PUT('/api/drafts/{draftId}/sessions', {
          params: { path: { draftId } },
          body: { version, put, remove: [] },
        }),
      ),
    (draft, put) => ({
      ...draft,
      sessions: draft.sessions.map((session) => {
        const wanted = put.find(({ id }) => id === session.id);
        return wanted === undefined
          ? session
          : { ...session, ...wanted, id: session.id, isChanged: true };
      }),
    }),
  );

export const useCopyWeek = (draftId: number) =>
  useDraftStep(draftId, (version, { from, to }: { from: string; to: string }) =>
    ok(
      api.POST('/api/drafts/{draftId}/copy-week', {
        params: { path: { draftId } },
        body: { version, from, to },
      }),
    ),
  );

export const useDecide = (draftId: number) =>
  useDraftStep(draftId, (version, { row, keep }: { row: number; keep: 'theirs' | 'mine' }) =>
    ok(
      api.POST('/api/drafts/{draftId}/meanwhile', {
        params: { path: { draftId } },
        body: { version, row, keep },
      }),
    ),
  );

export function usePublishDraft(draftId: number) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: { version: number; anyway: boolean }) =>
      ok(api.POST('/api/drafts/{draftId}/publish', { params: { path: { draftId } }, body })),
    onSuccess: () =>
      Promise.all([
        queries.invalidateQueries({ queryKey: draftQueries.all() }),
        queries.invalidateQueries({ queryKey: sessionsQueries.all() }),
      ]),
  });
}
