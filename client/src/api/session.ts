import { queryOptions, useMutation, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { api, ok } from './client';
import { drafts } from './note-drafts';
import { sendAllDrafts } from './notes';
import { Problem } from './problem';
import type { Me } from './types';

// Asking who is signed in is refused for a visitor, and browsers print every refusal as an error;
// so a visitor who never signed in on this device is not asked about.
const known = 'studio.has-signed-in';

export const sessionQueries = {
  me: () =>
    queryOptions({
      queryKey: ['me'] as const,
      staleTime: 5 * 60_000,
      queryFn: async (): Promise<Me | null> => {
        if (localStorage.getItem(known) === null) return null;
        try {
          return await ok(api.GET('/api/session'));
        } catch (refused) {
          if (!(refused instanceof Problem) || refused.status !== 401) throw refused;
          localStorage.removeItem(known);
          return null;
        }
      },
    }),
  demo: () =>
    queryOptions({
      queryKey: ['demo'] as const,
      staleTime: Infinity,
      queryFn: () => ok(api.GET('/api/demo')),
    }),
};

/** The person signed in; only used below the routes that ask for one. */
export function useMe(): Me {
  const { data } = useSuspenseQuery(sessionQueries.me());
  if (data === null) throw new Problem(401, {});
  return data;
}

export function useSignIn() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: { email: string; password: string }) =>
      ok(api.POST('/api/session', { body })),
    onSuccess: (me) => {
      localStorage.setItem(known, 'yes');
      queries.clear();
      queries.setQueryData(sessionQueries.me().queryKey, me);
    },
  });
}

export function useSignOut() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: async () => {
      await sendAllDrafts(queries);
      await ok(api.DELETE('/api/session'));
    },
    onSuccess: () => {
      localStorage.removeItem(known);
      // What was written and not sent stays with nobody else at this device.
      drafts.clear();
      queries.clear();
      queries.setQueryData(sessionQueries.me().queryKey, null);
    },
  });
}

export function useChangePassword() {
  return useMutation({
    mutationFn: (body: { current: string; next: string }) =>
      ok(api.PUT('/api/session/password', { body })),
  });
}
