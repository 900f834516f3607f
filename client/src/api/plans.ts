import { keepPreviousData, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { sessionsQueries } from './sessions';

export interface WantedItem {
  movement: string;
  minutes: number;
}

export interface WantedPlan {
  basedOn: number;
  items: WantedItem[];
}

/** Below the sessions, so that whatever makes a roster stale makes these stale too. */
export const planQueries = {
  all: () => [...sessionsQueries.all(), 'plans'] as const,
  ofClass: (classId: number) =>
    queryOptions({
      queryKey: [...planQueries.all(), 'class', classId] as const,
      queryFn: () => ok(api.GET('/api/classes/{classId}/plan', { params: { path: { classId } } })),
    }),
  /** Never rewritten, so never asked for twice. */
  version: (classId: number, version: number) =>
    queryOptions({
      queryKey: ['plan-versions', classId, version] as const,
      staleTime: Infinity,
      queryFn: () =>
        ok(
          api.GET('/api/classes/{classId}/plan/versions/{version}', {
            params: { path: { classId, version } },
          }),
        ),
    }),
  ofSession: (sessionId: number) =>
    queryOptions({
      queryKey: [...planQueries.all(), 'session', sessionId] as const,
      queryFn: () =>
        ok(api.GET('/api/sessions/{sessionId}/plan', { params: { path: { sessionId } } })),
    }),
  /** What a draft would come to; the last answer stays until the next is there. */
  preview: (sessionId: number, items: WantedItem[]) =>
    queryOptions({
      queryKey: [...planQueries.all(), 'preview', sessionId, items] as const,
      placeholderData: keepPreviousData,
      queryFn: () =>
        ok(
          api.POST('/api/sessions/{sessionId}/plan/preview', {
            params: { path: { sessionId } },
            body: { items },
          }),
        ),
    }),
};

export function useSaveClassPlan(classId: number) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: WantedPlan) =>
      ok(api.PUT('/api/classes/{classId}/plan', { params: { path: { classId } }, body })),
    onSuccess: (plan) => {
      queries.setQueryData(planQueries.ofClass(classId).queryKey, plan);
      void queries.invalidateQueries({ queryKey: sessionsQueries.all() });
    },
    // Somebody else's version is what she has to see next.
    onError: () => queries.invalidateQueries({ queryKey: planQueries.ofClass(classId).queryKey }),
  });
}

/** Keeps a plan for one session; null lets it follow its class again. */
export function useSaveSessionPlan() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: ({ sessionId, plan }: { sessionId: number; plan: WantedPlan | null }) => {
      const params = { path: { sessionId } };
      return ok(
        plan === null
          ? api.DELETE('/api/sessions/{sessionId}/plan', { params })
          : api.PUT('/api/sessions/{sessionId}/plan', { params, body: plan }),
      );
    },
    onSuccess: (plan, { sessionId }) => {
      queries.setQueryData(planQueries.ofSession(sessionId).queryKey, plan);
      void queries.invalidateQueries({ queryKey: sessionsQueries.all() });
    },
    onError: (_, { sessionId }) =>
      queries.invalidateQueries({ queryKey: planQueries.ofSession(sessionId).queryKey }),
  });
}

/** Asks for a plan in which more of those booked take part; keeps nothing. */
export function useSuitPlan() {
  return useMutation({
    mutationFn: ({ sessionId, items }: { sessionId: number; items: WantedItem[] }) =>
      ok(
        api.POST('/api/sessions/{sessionId}/plan/suit', {
          params: { path: { sessionId } },
          body: { items },
        }),
      ),
  });
}
