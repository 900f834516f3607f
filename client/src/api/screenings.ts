import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';
import type { Answer } from './types';

const byId = (id: number) => ({ params: { path: { clientId: id } } });

export interface GivenAnswers {
  version: number;
  answers: Readonly<Record<string, Answer>>;
}

export const screeningQueries = {
  /** The questions for where she is, why they are asked, and how far she has come. */
  form: (id: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(id), 'screening'] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/screening', byId(id))),
      // Answers stay no longer than the page that shows them.
      gcTime: 0,
    }),
};

/** Keeps what she has answered so far. `leaving` lets it go out while the page is being closed. */
export const saveDraft = (id: number, body: GivenAnswers, leaving = false) =>
  ok(
    api.PUT('/api/clients/{clientId}/screening/draft', {
      ...byId(id),
      body: { ...body, answers: { ...body.answers } },
      keepalive: leaving,
    }),
  );

/** Her answers, all of them. They are kept nowhere in the page once they are sent. */
export function useAnswerScreening(id: number) {
  const queries = useQueryClient();
  return useMutation({
    gcTime: 0,
    mutationFn: (body: GivenAnswers) =>
      ok(
        api.POST('/api/clients/{clientId}/screenings', {
          ...byId(id),
          body: { ...body, answers: { ...body.answers } },
        }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: clientQueries.of(id) }),
  });
}

export function useNothingChanged(id: number) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: () => ok(api.POST('/api/clients/{clientId}/screening/nothing-changed', byId(id))),
    onSuccess: () => queries.invalidateQueries({ queryKey: clientQueries.of(id) }),
  });
}
