import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';

export const staffQueries = {
  all: () => ['staff'] as const,
  instructors: () =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'instructors'] as const,
      queryFn: () => ok(api.GET('/api/instructors')),
    }),
};

export function useAddQualification(instructorId: number) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: { kind: string; issuedOn: string; expiresOn: string }) =>
      ok(
        api.POST('/api/instructors/{instructorId}/qualifications', {
          params: { path: { instructorId } },
          body,
        }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: staffQueries.all() }),
  });
}
