import { queryOptions } from '@tanstack/react-query';
import { api, ok } from './client';

const rarely = 60 * 60_000;

/** What changes only when the studio changes its own set-up. */
export const catalogueQueries = {
  stages: () =>
    queryOptions({
      queryKey: ['stages'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/stages')),
    }),
  factors: () =>
    queryOptions({
      queryKey: ['factors'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/factors')),
    }),
  policies: () =>
    queryOptions({
      queryKey: ['policies'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/policies')),
    }),
  locations: () =>
    queryOptions({
      queryKey: ['locations'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/locations')),
    }),
  classes: () =>
    queryOptions({
      queryKey: ['classes'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/classes')),
    }),
  movements: () =>
    queryOptions({
      queryKey: ['movements'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/movements')),
    }),
};
