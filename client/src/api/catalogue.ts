import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { api, ok } from './client';
import type { Question } from './types';

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
  rules: () =>
    queryOptions({
      queryKey: ['rules'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/catalogue/rules')),
    }),
  movements: () =>
    queryOptions({
      queryKey: ['movements'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/movements')),
    }),
  movementsWithRules: () =>
    queryOptions({
      queryKey: ['movements', 'rules'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/catalogue/movements')),
    }),
  warningSigns: () =>
    queryOptions({
      queryKey: ['warning-signs'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/warning-signs')),
    }),
  sources: () =>
    queryOptions({
      queryKey: ['sources'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/catalogue/sources')),
    }),
  coverage: () =>
    queryOptions({
      queryKey: ['coverage'] as const,
      staleTime: rarely,
      queryFn: () => ok(api.GET('/api/catalogue/coverage')),
    }),
  versions: () =>
    queryOptions({
      queryKey: ['rules', 'versions'] as const,
      queryFn: () => ok(api.GET('/api/catalogue/versions')),
    }),
  policyChanges: () =>
    queryOptions({
      queryKey: ['policies', 'changes'] as const,
      queryFn: () => ok(api.GET('/api/policies/changes')),
    }),
  /** About nobody in particular; the answer stays on the page while the next one is on its way. */
  whatIf: (question: Question) =>
    queryOptions({
      queryKey: ['what-if', question] as const,
      staleTime: rarely,
      placeholderData: keepPreviousData,
      queryFn: () => ok(api.POST('/api/what-if', { body: question })),
    }),
};
