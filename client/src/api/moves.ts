import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';
import { sessionsQueries } from './sessions';

export const moveQueries = {
  all: () => ['moves'] as const,
  list: () =>
    queryOptions({
      queryKey: [...moveQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/moves')),
    }),
};

function useMoveChange<Given, Made>(change: (given: Given) => Promise<Made>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSettled: () =>
      Promise.all(
        [moveQueries.all(), sessionsQueries.all(), clientQueries.all()].map((queryKey) =>
          queries.invalidateQueries({ queryKey }),
        ),
      ),
  });
}

export const useAcceptMove = () =>
  useMoveChange((id: number) =>
    ok(api.POST('/api/moves/{moveId}/accept', { params: { path: { moveId: id } } })),
  );

export const useDeclineMove = () =>
  useMoveChange(({ id, reason }: { id: number; reason: string }) =>
    ok(
      api.POST('/api/moves/{moveId}/decline', {
        params: { path: { moveId: id } },
        body: { reason },
      }),
    ),
  );
