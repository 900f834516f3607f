import { queryOptions } from '@tanstack/react-query';
import { api, ok } from './client';

export const sessionsQueries = {
  all: () => ['sessions'] as const,
  between: (from: string, to: string) =>
    queryOptions({
      queryKey: [...sessionsQueries.all(), 'between', from, to] as const,
      queryFn: () => ok(api.GET('/api/sessions', { params: { query: { from, to } } })),
    }),
  /** Her own only, whatever else the reader may see. */
  mine: (from: string, to: string) =>
    queryOptions({
      queryKey: [...sessionsQueries.all(), 'mine', from, to] as const,
      queryFn: () => ok(api.GET('/api/sessions', { params: { query: { from, to, mine: true } } })),
    }),
  /** What was seen of the people in one session, and whether more may be written. */
  notes: (id: number) =>
    queryOptions({
      queryKey: [...sessionsQueries.all(), id, 'notes'] as const,
      queryFn: () =>
        ok(api.GET('/api/sessions/{sessionId}/notes', { params: { path: { sessionId: id } } })),
    }),
  roster: (id: number) =>
    queryOptions({
      queryKey: [...sessionsQueries.all(), id, 'roster'] as const,
      queryFn: () =>
        ok(api.GET('/api/sessions/{sessionId}/roster', { params: { path: { sessionId: id } } })),
    }),
};
