import { infiniteQueryOptions, useMutation } from '@tanstack/react-query';
import { api, ok } from './client';

/** The server gives so many entries at once; fewer are the last. */
const page = 100;

export const auditQueries = {
  all: () => ['audit'] as const,
  /** The newest first, of one client or of all. */
  list: (client?: number) =>
    infiniteQueryOptions({
      queryKey: [...auditQueries.all(), client ?? 'all'] as const,
      queryFn: ({ pageParam }) =>
        ok(api.GET('/api/audit', { params: { query: { client, before: pageParam } } })),
      initialPageParam: undefined as number | undefined,
      getNextPageParam: (last) => (last.length < page ? undefined : last.at(-1)?.id),
      // A trail is looked at to know what happened up to now.
      staleTime: 0,
    }),
};

/** Goes through the whole trail. */
export const useCheckTrail = () =>
  useMutation({ mutationFn: () => ok(api.GET('/api/audit/check')) });
