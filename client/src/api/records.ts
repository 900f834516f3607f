import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';
import type { ErasureConfirmed } from './types';

const byId = (clientId: number) => ({ params: { path: { clientId } } });

/** All that is held about a client. Making it is noted each time, so it is not asked for again by itself. */
export const recordQueries = {
  of: (clientId: number) =>
    queryOptions({
      queryKey: ['record', clientId] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/record', byId(clientId))),
      staleTime: 'static',
      gcTime: 0,
    }),
};

export const recordFile = (clientId: number) => `/api/clients/${clientId}/record/file`;

export const erasureQueries = {
  all: () => ['erasures'] as const,
  list: () =>
    queryOptions({
      queryKey: [...erasureQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/erasures')),
    }),
  /**
   * What would go, what would stay and until when. Kept apart from the list: once she is erased
   * there is nothing to ask for, and the page that did it is still open for a moment.
   */
  plan: (clientId: number) =>
    queryOptions({
      queryKey: ['erasure-plan', clientId] as const,
      staleTime: 0,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/erasure', byId(clientId))),
    }),
  kept: (erasureId: number) =>
    queryOptions({
      queryKey: ['kept', erasureId] as const,
      queryFn: () =>
        ok(api.GET('/api/erasures/{erasureId}/kept', { params: { path: { erasureId } } })),
      staleTime: 'static',
      gcTime: 0,
    }),
};

export const keptFile = (erasureId: number, letterId: number) =>
  `/api/erasures/${erasureId}/letters/${letterId}/file`;

function useWishChange<Made>(clientId: number, change: () => Promise<Made>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSettled: () =>
      queries.invalidateQueries({ queryKey: erasureQueries.plan(clientId).queryKey }),
  });
}

export const useAskForErasure = (clientId: number) =>
  useWishChange(clientId, () =>
    ok(api.POST('/api/clients/{clientId}/erasure/wish', byId(clientId))),
  );

export const useTakeBackErasure = (clientId: number) =>
  useWishChange(clientId, () =>
    ok(api.DELETE('/api/clients/{clientId}/erasure/wish', byId(clientId))),
  );

export const useErase = (clientId: number) => {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: ErasureConfirmed) =>
      ok(api.POST('/api/clients/{clientId}/erasure', { ...byId(clientId), body })),
    onSuccess: () => {
      queries.removeQueries({ queryKey: clientQueries.of(clientId) });
      return queries.invalidateQueries({ queryKey: erasureQueries.list().queryKey });
    },
  });
};
