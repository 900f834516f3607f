import { keepPreviousData, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';
import { newKey } from './request-key';
import { sessionsQueries } from './sessions';
import type {
  ClosureRequest,
  HolidayReport,
  SeriesChange,
  SeriesRequest,
  SessionRequest,
} from './types';

export const seriesQueries = {
  all: () => ['series'] as const,
  list: () =>
    queryOptions({
      queryKey: [...seriesQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/series')),
    }),
  one: (seriesId: number) =>
    queryOptions({
      queryKey: [...seriesQueries.all(), 'one', seriesId] as const,
      queryFn: () => ok(api.GET('/api/series/{seriesId}', { params: { path: { seriesId } } })),
    }),
  /** What a rule gives while it is written; the last answer stays until the next is there. */
  preview: (request: SeriesRequest) =>
    queryOptions({
      queryKey: [...seriesQueries.all(), 'preview', request] as const,
      queryFn: () => ok(api.POST('/api/series/preview', { body: request })),
      placeholderData: keepPreviousData,
      retry: false,
    }),
  closures: () =>
    queryOptions({
      queryKey: [...seriesQueries.all(), 'closures'] as const,
      queryFn: () => ok(api.GET('/api/closures')),
    }),
};

export const letGoQueries = {
  all: () => ['let-go'] as const,
  list: () =>
    queryOptions({
      queryKey: [...letGoQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/let-go')),
    }),
};

/** A changed timetable changes every list of sessions, and what each client may choose. */
function useSettle() {
  const queries = useQueryClient();
  return () =>
    Promise.all(
      [seriesQueries.all(), letGoQueries.all(), sessionsQueries.all(), clientQueries.all()].map(
        (queryKey) => queries.invalidateQueries({ queryKey }),
      ),
    );
}

export function useAddSeries() {
  const settle = useSettle();
  return useMutation({
    mutationFn: (body: SeriesRequest) =>
      ok(
        api.POST('/api/series', {
          params: { header: { 'Idempotency-Key': newKey() } },
          body,
        }),
      ),
    onSuccess: settle,
  });
}

/** Only looked at while `dryRun`; nothing on the page is stale then. */
interface Looking {
  dryRun: boolean;
}

const unless =
  (settle: () => Promise<unknown>) =>
  (_: unknown, { dryRun }: Looking) =>
    dryRun ? undefined : settle();

export function useChangeSeries(seriesId: number) {
  const settle = useSettle();
  return useMutation({
    mutationFn: ({ dryRun, body }: Looking & { body: SeriesChange }) =>
      ok(
        api.POST('/api/series/{seriesId}/changes', {
          params: { path: { seriesId }, query: { dryRun } },
          body,
        }),
      ),
    onSuccess: unless(settle),
  });
}

export function useEndSeries(seriesId: number) {
  const settle = useSettle();
  return useMutation({
    mutationFn: ({ dryRun, lastOn }: Looking & { lastOn: string }) =>
      ok(
        api.POST('/api/series/{seriesId}/end', {
          params: { path: { seriesId }, query: { dryRun } },
          body: { lastOn },
        }),
      ),
    onSuccess: unless(settle),
  });
}

export function useSkipDate(seriesId: number) {
  const settle = useSettle();
  return useMutation({
    mutationFn: ({ dryRun, on, skips }: Looking & { on: string; skips: boolean }) => {
      const where = { path: { seriesId, on } };
      return ok(
        skips
          ? api.PUT('/api/series/{seriesId}/exceptions/{on}', {
              params: { ...where, query: { dryRun } },
            })
          : api.DELETE('/api/series/{seriesId}/exceptions/{on}', {
              params: { ...where, query: { dryRun, anyway: true } },
            }),
      );
    },
    onSuccess: unless(settle),
  });
}

export function useChangeSession(sessionId: number) {
  const settle = useSettle();
  return useMutation({
    mutationFn: ({ dryRun, body }: Looking & { body: SessionRequest }) =>
      ok(
        api.PUT('/api/sessions/{sessionId}', {
          params: { path: { sessionId }, query: { dryRun } },
          body,
        }),
      ),
    onSuccess: unless(settle),
  });
}

export function useAddClosure() {
  const settle = useSettle();
  return useMutation({
    mutationFn: ({ dryRun, body }: Looking & { body: ClosureRequest }) =>
      ok(api.POST('/api/closures', { params: { query: { dryRun } }, body })),
    onSuccess: unless(settle),
  });
}

export function useCallOff(closureId: number) {
  const settle = useSettle();
  return useMutation({
    mutationFn: ({ dryRun }: Looking) =>
      ok(
        api.POST('/api/closures/{closureId}/call-off', {
          params: { path: { closureId }, query: { dryRun } },
        }),
      ),
    onSuccess: unless(settle),
  });
}

export function useRemoveClosure() {
  const settle = useSettle();
  return useMutation({
    mutationFn: (closureId: number) =>
      ok(api.DELETE('/api/closures/{closureId}', { params: { path: { closureId } } })),
    onSuccess: settle,
  });
}

/** A refused file answers with a report too: it is no failure of the request. */
export function useImportHolidays() {
  const settle = useSettle();
  return useMutation({
    mutationFn: async ({
      dryRun,
      file,
      locationId,
    }: Looking & { file: File; locationId: number | null }): Promise<HolidayReport> => {
      const form = new FormData();
      form.append('file', file);
      const answer = await api.POST('/api/closures/import', {
        params: { query: { dryRun, ...(locationId === null ? {} : { locationId }) } },
        body: form as never,
        bodySerializer: (body) => body as unknown as FormData,
      });
      return answer.response.status === 422
        ? (answer.error as unknown as HolidayReport)
        : ok(Promise.resolve(answer));
    },
    onSuccess: unless(settle),
  });
}

export function useSeenTo() {
  const settle = useSettle();
  return useMutation({
    mutationFn: (bookingId: number) =>
      ok(api.POST('/api/let-go/{bookingId}/seen-to', { params: { path: { bookingId } } })),
    onSuccess: settle,
  });
}
