import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';
import { staffQueries } from './staff';
import type { NewAccount } from './types';

export const accountQueries = {
  all: () => ['accounts'] as const,
  list: () =>
    queryOptions({
      queryKey: [...accountQueries.all(), 'list'] as const,
      queryFn: () => ok(api.GET('/api/accounts')),
    }),
};

export function useAddAccount() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: NewAccount) => ok(api.POST('/api/accounts', { body })),
    onSuccess: () =>
      Promise.all(
        [accountQueries.all(), clientQueries.all(), staffQueries.all()].map((queryKey) =>
          queries.invalidateQueries({ queryKey }),
        ),
      ),
  });
}
