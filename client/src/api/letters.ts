import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';
import type { LetterReview } from './types';

const byId = (clientId: number) => ({ params: { path: { clientId } } });

interface LetterKey {
  clientId: number;
  letterId: number;
}

export const letterQueries = {
  all: () => ['letters'] as const,
  waiting: () =>
    queryOptions({
      queryKey: [...letterQueries.all(), 'waiting'] as const,
      queryFn: () => ok(api.GET('/api/letters/waiting')),
    }),
  /** Names nobody; what the menu asks. */
  count: () =>
    queryOptions({
      queryKey: [...letterQueries.all(), 'count'] as const,
      queryFn: () => ok(api.GET('/api/letters/waiting/count')),
    }),
  /** People by name, among those who have handed in a letter. */
  people: (find: string) =>
    queryOptions({
      queryKey: [...letterQueries.all(), 'people', find] as const,
      queryFn: () => ok(api.GET('/api/letters/people', { params: { query: { find } } })),
      enabled: find.length > 0,
    }),
  read: () =>
    queryOptions({
      queryKey: [...letterQueries.all(), 'read'] as const,
      queryFn: () => ok(api.GET('/api/letters/read')),
    }),
  /** Positions and demands that a letter may ask to leave out. */
  traits: () =>
    queryOptions({
      queryKey: [...letterQueries.all(), 'traits'] as const,
      staleTime: Infinity,
      queryFn: () => ok(api.GET('/api/letters/traits')),
    }),
  of: (clientId: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(clientId), 'letters'] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/letters', byId(clientId))),
    }),
  /** What her clinician is asked, for one page of paper. */
  request: (clientId: number) =>
    queryOptions({
      queryKey: [...clientQueries.of(clientId), 'letter-request'] as const,
      queryFn: () => ok(api.GET('/api/clients/{clientId}/letters/request', byId(clientId))),
    }),
};

export const letterFile = ({ clientId, letterId }: LetterKey) =>
  `/api/clients/${clientId}/letters/${letterId}/file`;

function useLetterChange<Given, Made>(clientId: number, change: (given: Given) => Promise<Made>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSuccess: () =>
      Promise.all(
        [clientQueries.of(clientId), letterQueries.all()].map((queryKey) =>
          queries.invalidateQueries({ queryKey }),
        ),
      ),
  });
}

const path = ({ clientId, letterId }: LetterKey) => ({ params: { path: { clientId, letterId } } });

export const useReviewLetter = (letter: LetterKey) =>
  useLetterChange(letter.clientId, (body: LetterReview) =>
    ok(api.POST('/api/clients/{clientId}/letters/{letterId}/review', { ...path(letter), body })),
  );

export const useRefuseLetter = (letter: LetterKey) =>
  useLetterChange(letter.clientId, (because: string) =>
    ok(
      api.POST('/api/clients/{clientId}/letters/{letterId}/refuse', {
        ...path(letter),
        body: { because },
      }),
    ),
  );

export const useWithdrawLetter = (letter: LetterKey) =>
  useLetterChange(letter.clientId, () =>
    ok(api.POST('/api/clients/{clientId}/letters/{letterId}/withdraw', path(letter))),
  );

/** Paper in the reader's own hand: filed and read in one. */
export const useReadPaperLetter = (clientId: number) =>
  useLetterChange(clientId, (body: LetterReview) =>
    ok(api.POST('/api/clients/{clientId}/clearances', { ...byId(clientId), body })),
  );

/** Paper at the desk, or a file of it: it counts once somebody who reads letters has read it. */
export const useFileLetter = (clientId: number) =>
  useLetterChange(clientId, (file: File | null) =>
    file === null ? post(clientId, '?onPaper=true') : post(clientId, '', withFile(file)),
  );

// A form with a file is none of the JSON that the rest of the wire is made of.
const post = (clientId: number, query: string, body?: FormData) =>
  ok(
    fetch(`/api/clients/${clientId}/letters${query}`, { method: 'POST', body }).then(
      async (response) => {
        const said: unknown = await response.json().catch(() => ({}));
        return response.ok ? { data: said, response } : { error: said, response };
      },
    ),
  );

function withFile(file: File) {
  const form = new FormData();
  form.append('file', file);
  return form;
}
