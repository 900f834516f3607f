import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';

export const jobQueries = {
  all: () => ['jobs'] as const,
  list: () =>
    queryOptions({
      queryKey: [...jobQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/jobs')),
    }),
};

/** Runs a job now. It may change anything, so everything on screen is asked for again. */
export function useRunJob() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (name: string) =>
      ok(api.POST('/api/jobs/{name}/run', { params: { path: { name } } })),
    onSuccess: () => queries.invalidateQueries(),
  });
}
