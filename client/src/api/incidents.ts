import { infiniteQueryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';

/** The server gives so many entries at once; fewer are the last. */
const page = 100;

/** Which entries are looked at; everything given must be met. */
export interface IncidentFilter {
  client?: number;
  session?: number;
  /** The day of the session. */
  on?: string;
  find?: string;
}

export const incidentQueries = {
  all: () => ['incidents'] as const,
  list: (filter: IncidentFilter) =>
    infiniteQueryOptions({
      queryKey: [...incidentQueries.all(), filter] as const,
      queryFn: ({ pageParam }) =>
        ok(api.GET('/api/incidents', { params: { query: { ...filter, before: pageParam } } })),
      initialPageParam: undefined as number | undefined,
      getNextPageParam: (last) => (last.length < page ? undefined : last.at(-1)?.id),
      staleTime: 0,
    }),
};

export function useAddToIncident(incidentId: number) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: { happened: string; done: string }) =>
      ok(
        api.POST('/api/incidents/{incidentId}/more', {
          params: { path: { incidentId } },
          body,
        }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: incidentQueries.all() }),
  });
}
