import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import type { FeedReads } from './types';

export const feedQueries = {
  list: () =>
    queryOptions({
      queryKey: ['feeds'] as const,
      queryFn: () => ok(api.GET('/api/feeds')),
    }),
};

/** One session as a file for a calendar. */
export const sessionCalendar = (sessionId: number, named = false) =>
  `/api/sessions/${sessionId}/calendar${named ? '?named=true' : ''}`;

function useFeedChange<Wanted, Made>(change: (wanted: Wanted) => Promise<Made>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSettled: () => queries.invalidateQueries({ queryKey: feedQueries.list().queryKey }),
  });
}

export const useMakeFeed = () =>
  useFeedChange((body: { reads: FeedReads; namesClass: boolean }) =>
    ok(api.POST('/api/feeds', { body })),
  );

const byId = (feedId: number) => ({ params: { path: { feedId } } });

export const useNameInFeed = () =>
  useFeedChange(({ feedId, namesClass }: { feedId: number; namesClass: boolean }) =>
    ok(api.PUT('/api/feeds/{feedId}', { ...byId(feedId), body: { namesClass } })),
  );

export const useRevokeFeed = () =>
  useFeedChange((feedId: number) => ok(api.DELETE('/api/feeds/{feedId}', byId(feedId))));
