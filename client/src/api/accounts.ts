import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';
import { staffQueries } from './staff';
import type { NewAccount, Role } from './types';

export const accountQueries = {
  all: () => ['accounts'] as const,
  list: () =>
    queryOptions({
      queryKey: [...accountQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/accounts')),
    }),
};

function useAccountChange<Given, Made>(change: (given: Given) => Promise<Made>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSuccess: () =>
      Promise.all(
        [accountQueries.all(), clientQueries.all(), staffQueries.all()].map((queryKey) =>
          queries.invalidateQueries({ queryKey }),
        ),
      ),
  });
}

export const useAddAccount = () =>
  useAccountChange((body: NewAccount) => ok(api.POST('/api/accounts', { body })));

export const useGiveAccount = (clientId: number) =>
  useAccountChange((password: string) =>
    ok(
      api.POST('/api/clients/{clientId}/account', {
        params: { path: { clientId } },
        body: { password },
      }),
    ),
  );

/** All of an account's roles from now on. */
export const useChangeRoles = (accountId: number) =>
  useAccountChange((roles: Role[]) =>
    ok(
      api.PUT('/api/accounts/{accountId}/roles', {
        params: { path: { accountId } },
        body: { roles },
      }),
    ),
  );
