import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { flagQueries } from './flags';
import type { BirthMode, Contact, Evidence, NewClient, WarningSaid, WayBack } from './types';

const byId = (id: number) => ({ params: { path: { clientId: id } } });

export const clientQueries = {
  all: () => ['clients'] as const,
  find: (find: string) =>
    queryOptions({
      queryKey: [...clientQueries.all(), 'find', find] as const,
      queryFn: () => ok(api.GET('/api/clients', { params: { query: { find } } })),
      enabled: find.length > 0,
    }),
  of: (id: number) => [...clientQueries.all(), id] as const,
  card: (id: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(id), 'card'] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}', byId(id))),
    }),
  datings: (id: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(id), 'datings'] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/datings', byId(id))),
    }),
  bookings: (id: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(id), 'bookings'] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/bookings', byId(id))),
    }),
  /** One session with what changes for her in it. */
  session: (id: number, sessionId: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(id), 'session', sessionId] as const,
      queryFn: () =>
        ok(
          api.GET('/api/clients/{clientId}/sessions/{sessionId}', {
            params: { path: { clientId: id, sessionId } },
          }),
        ),
    }),
  /** What her instructors saw; for herself and the owner. */
  notes: (id: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(id), 'notes'] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/notes', byId(id))),
    }),
  choices: (id: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(id), 'choices'] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/sessions', byId(id))),
    }),
};

/** A change to one client; the button stays busy until her card is true again. */
function useClientChange<Given, Made>(id: number, change: (given: Given) => Promise<Made>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSuccess: () => queries.invalidateQueries({ queryKey: clientQueries.of(id) }),
  });
}

export function useAddClient() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: NewClient) => ok(api.POST('/api/clients', { body })),
    onSuccess: () => queries.invalidateQueries({ queryKey: clientQueries.all() }),
  });
}

export const useChangeDetails = (id: number) =>
  useClientChange(id, (body: Contact) =>
    ok(
      api.PUT('/api/clients/{clientId}', {
        ...byId(id),
        body: { bornOn: null, forgetBornOn: null, ...body },
      }),
    ),
  );

export const useReviseDating = (id: number) =>
  useClientChange(id, (body: Evidence) =>
    ok(api.POST('/api/clients/{clientId}/datings', { ...byId(id), body })),
  );

export const useAddFactor = (id: number) =>
  useClientChange(id, (body: { code: string; from: string; to: string | null }) =>
    ok(api.POST('/api/clients/{clientId}/factors', { ...byId(id), body })),
  );

export const useEndFactor = (id: number) =>
  useClientChange(id, ({ factorId, on }: { factorId: number; on: string }) =>
    ok(
      api.POST('/api/clients/{clientId}/factors/{factorId}/end', {
        params: { path: { clientId: id, factorId } },
        body: { on },
      }),
    ),
  );

/** A warning sign: everything of hers is held at once, and what was said of it is written down. */
export const useHold = (id: number) =>
  useClientChange(id, ({ body, key }: { body: WarningSaid; key: string }) =>
    ok(
      api.POST('/api/clients/{clientId}/holds', {
        params: { path: { clientId: id }, header: { 'Idempotency-Key': key } },
        body,
      }),
    ),
  );

export const useReportBirth = (id: number) =>
  useClientChange(id, (body: { on: string; mode: BirthMode }) =>
    ok(api.POST('/api/clients/{clientId}/birth', { ...byId(id), body })),
  );

/** Another day or mode; a mode left out stays as it was. */
export const useCorrectBirth = (id: number) =>
  useClientChange(id, (body: { on: string; mode: BirthMode | null }) =>
    ok(api.PUT('/api/clients/{clientId}/birth', { ...byId(id), body })),
  );

export const useTakeBackBirth = (id: number) =>
  useClientChange(id, () => ok(api.DELETE('/api/clients/{clientId}/birth', byId(id))));

/** That somebody rang her; the item that asked for it is closed. */
export function useNoteCall(id: number) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: () => ok(api.POST('/api/clients/{clientId}/rung', byId(id))),
    onSuccess: () =>
      Promise.all([
        queries.invalidateQueries({ queryKey: clientQueries.of(id) }),
        queries.invalidateQueries({ queryKey: flagQueries.all() }),
      ]),
  });
}

/** The owner opens the page of somebody who comes again after a loss. */
export const useOpenWayBack = (id: number) =>
  useClientChange(id, (body: WayBack) =>
    ok(api.POST('/api/clients/{clientId}/return', { ...byId(id), body })),
  );

export const useReportLoss = (id: number) =>
  useClientChange(id, (body: { on: string | null }) =>
    ok(api.POST('/api/clients/{clientId}/loss', { ...byId(id), body })),
  );
