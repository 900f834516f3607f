import { queryOptions } from '@tanstack/react-query';
import { api, ok } from './client';

export const sessionsQueries = {
  all: () => ['sessions'] as const,
  between: (from: string, to: string) =>
    queryOptions({
      queryKey: [...sessionsQueries.all(), 'between', from, to] as const,
      queryFn: () => ok(api.GET('/api/sessions', { params: { query: { from, to } } })),
    }),
  roster: (id: number) =>
    queryOptions({
      queryKey: [...sessionsQueries.all(), id, 'roster'] as const,
      queryFn: () => ok(api.GET('/api/sessions/{id}/roster', { params: { path: { id } } })),
    }),
};
