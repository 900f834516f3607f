import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import type { AssignmentAsked } from './types';

export const assignmentQueries = {
  all: () => ['assignments'] as const,
  list: () =>
    queryOptions({
      queryKey: [...assignmentQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/assignments')),
    }),
  byId: (assignmentId: number) =>
    queryOptions({
      queryKey: [...assignmentQueries.all(), assignmentId] as const,
      queryFn: () =>
        ok(api.GET('/api/assignments/{assignmentId}', { params: { path: { assignmentId } } })),
      // The seconds go on while it is at it, and a page that missed the end hears of it.
      refetchInterval: ({ state }) => (state.data?.run.status === 'running' ? 1000 : false),
    }),
};

export function useBeginAssignment() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: AssignmentAsked) => ok(api.POST('/api/assignments', { body })),
    onSuccess: () => queries.invalidateQueries({ queryKey: assignmentQueries.all() }),
  });
}

/** Ends it early while it is at it; puts it aside afterwards. */
export function useEndAssignment() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (assignmentId: number) =>
      ok(api.DELETE('/api/assignments/{assignmentId}', { params: { path: { assignmentId } } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: assignmentQueries.all() }),
  });
}

export function useDraftOfAssignment() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (assignmentId: number) =>
      ok(api.POST('/api/assignments/{assignmentId}/draft', { params: { path: { assignmentId } } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: assignmentQueries.all() }),
  });
}
