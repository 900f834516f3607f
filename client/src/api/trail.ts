import { infiniteQueryOptions } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';

const pageSize = 100;

/** Who read or changed one person’s record, newest first. */
export const trailQueries = {
  of: (id: number) =>
    infiniteQueryOptions({
      queryKey: [...clientQueries.of(id), 'trail'] as const,
      queryFn: ({ pageParam }) =>
        ok(api.GET('/api/audit', { params: { query: { client: id, before: pageParam } } })),
      initialPageParam: undefined as number | undefined,
      getNextPageParam: (page) => (page.length < pageSize ? undefined : page.at(-1)?.id),
    }),
};
