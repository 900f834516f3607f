import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { flagQueries } from './flags';
import { sessionsQueries } from './sessions';
import type { CoverAnswer, CoverChoice } from './types';

// Under sessions: whatever makes sessions stale makes cover stale.
export const coverQueries = {
  all: () => [...sessionsQueries.all(), 'cover'] as const,
  /** What nobody teaches, the soonest first. */
  open: () =>
    queryOptions({
      queryKey: [...coverQueries.all(), 'open'] as const,
      queryFn: () => ok(api.GET('/api/cover')),
      // It becomes urgent as time goes by, whether anything changes or not.
      refetchInterval: 60_000,
    }),
  /** Cover as far as the instructor who looks is concerned. */
  mine: () =>
    queryOptions({
      queryKey: [...coverQueries.all(), 'mine'] as const,
      queryFn: () => ok(api.GET('/api/cover/mine')),
    }),
};

function useCoverChange<Given, Made>(change: (given: Given) => Promise<Made>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSettled: () =>
      Promise.all(
        [sessionsQueries.all(), flagQueries.all()].map((queryKey) =>
          queries.invalidateQueries({ queryKey }),
        ),
      ),
  });
}

const of = (sessionId: number) => ({ params: { path: { sessionId } } });

export const useAskForCover = () =>
  useCoverChange((id: number) => ok(api.POST('/api/sessions/{sessionId}/cover', of(id))));

export const useWithdrawCover = () =>
  useCoverChange((id: number) => ok(api.DELETE('/api/sessions/{sessionId}/cover', of(id))));

export const useAnswerCover = () =>
  useCoverChange(({ id, answer }: { id: number; answer: CoverAnswer }) =>
    ok(api.PUT('/api/sessions/{sessionId}/cover/answer', { ...of(id), body: { answer } })),
  );

export const useTakeCover = () =>
  useCoverChange(({ id, anyway }: { id: number; anyway: boolean }) =>
    ok(api.POST('/api/sessions/{sessionId}/cover/take', { ...of(id), body: { anyway } })),
  );

export const useAskForDays = () =>
  useCoverChange((days: { from: string; to: string; instructorId: number | null }) =>
    ok(api.POST('/api/cover/away', { body: days })),
  );

/** Worked out and not kept. */
export const usePlanCover = () =>
  useMutation({
    mutationFn: (sessionIds: readonly number[]) =>
      ok(api.POST('/api/cover/plan', { body: { sessionIds: [...sessionIds] } })),
  });

export const useSettleCover = () =>
  useCoverChange(({ covers, anyway }: { covers: CoverChoice[]; anyway: boolean }) =>
    ok(api.POST('/api/cover/settle', { body: { covers, anyway } })),
  );
