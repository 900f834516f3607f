import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { sessionsQueries } from './sessions';

export const flagQueries = {
  all: () => ['flags'] as const,
  list: () =>
    queryOptions({
      queryKey: [...flagQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/flags')),
    }),
};

function useRead<Given>(read: (given: Given) => Promise<unknown>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: read,
    onSuccess: () =>
      Promise.all(
        [flagQueries.all(), sessionsQueries.all()].map((queryKey) =>
          queries.invalidateQueries({ queryKey }),
        ),
      ),
  });
}

const readOne = (flagId: number) =>
  ok(api.POST('/api/flags/{flagId}/read', { params: { path: { flagId } } }));

export const useReadFlag = () => useRead(readOne);

export const useReadFlags = () =>
  useRead((flagIds: readonly number[]) => Promise.all(flagIds.map(readOne)));

/** Ticks every new flag of one session's roster. */
export const useReadRoster = () =>
  useRead((sessionId: number) =>
    ok(api.POST('/api/sessions/{sessionId}/roster/read', { params: { path: { sessionId } } })),
  );
