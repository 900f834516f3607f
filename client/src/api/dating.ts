import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { api, ok } from './client';
import type { Evidence } from './types';

export const isGiven = (evidence: Evidence) =>
  evidence.lastPeriod != null ||
  evidence.scan != null ||
  evidence.transfer != null ||
  evidence.stated != null;

export const datingQueries = {
  /** The due date this evidence would give, reckoned on the day `on`; nothing is stored. */
  preview: (evidence: Evidence, on: string) =>
    queryOptions({
      queryKey: ['dating', evidence, on] as const,
      queryFn: () => ok(api.POST('/api/dating', { body: { ...evidence, on } })),
      enabled: isGiven(evidence),
      placeholderData: keepPreviousData,
      staleTime: Infinity,
    }),
};
