import {
  infiniteQueryOptions,
  queryOptions,
  useMutation,
  useQueryClient,
} from '@tanstack/react-query';
import { api, ok } from './client';
import type { MessageKind, MessageStatus } from './types';

/** Which messages are looked at; everything given must be met. */
export interface MessageFilter {
  status?: MessageStatus;
  kind?: MessageKind;
  find?: string;
}

export const messageQueries = {
  all: () => ['messages'] as const,
  log: (filter: MessageFilter) =>
    infiniteQueryOptions({
      queryKey: [...messageQueries.all(), 'log', filter] as const,
      queryFn: ({ pageParam }) =>
        ok(api.GET('/api/messages', { params: { query: { ...filter, before: pageParam } } })),
      initialPageParam: undefined as number | undefined,
      getNextPageParam: (last) => (last.more ? last.messages.at(-1)?.id : undefined),
      staleTime: 0,
    }),
  counts: () =>
    queryOptions({
      queryKey: [...messageQueries.all(), 'counts'] as const,
      queryFn: () => ok(api.GET('/api/messages/counts')),
    }),
  kinds: () =>
    queryOptions({
      queryKey: [...messageQueries.all(), 'kinds'] as const,
      queryFn: () => ok(api.GET('/api/messages/kinds')),
    }),
  one: (messageId: number) =>
    queryOptions({
      queryKey: [...messageQueries.all(), 'one', messageId] as const,
      queryFn: () => ok(api.GET('/api/messages/{messageId}', { params: { path: { messageId } } })),
    }),
  mine: () =>
    queryOptions({
      queryKey: [...messageQueries.all(), 'mine'] as const,
      queryFn: () => ok(api.GET('/api/messages/mine')),
    }),
  choices: () =>
    queryOptions({
      queryKey: [...messageQueries.all(), 'choices'] as const,
      queryFn: () => ok(api.GET('/api/messages/choices')),
    }),
  /** What the link in a message stops. */
  stop: (token: string) =>
    queryOptions({
      queryKey: [...messageQueries.all(), 'stop', token] as const,
      queryFn: () => ok(api.GET('/api/mail-stops/{token}', { params: { path: { token } } })),
      retry: false,
    }),
};

function useThenAll() {
  const queries = useQueryClient();
  return () => queries.invalidateQueries({ queryKey: messageQueries.all() });
}

export function useTestMessage() {
  return useMutation({
    mutationFn: () => ok(api.POST('/api/messages/test')),
    onSuccess: useThenAll(),
  });
}

export function useRetryAll() {
  return useMutation({
    mutationFn: () => ok(api.POST('/api/messages/retry')),
    onSuccess: useThenAll(),
  });
}

export function useRetry() {
  return useMutation({
    mutationFn: (messageId: number) =>
      ok(api.POST('/api/messages/{messageId}/retry', { params: { path: { messageId } } })),
    onSuccess: useThenAll(),
  });
}

export function useChooseMessages() {
  return useMutation({
    mutationFn: ({ kind, wanted }: { kind: MessageKind; wanted: boolean }) =>
      ok(api.PUT('/api/messages/choices/{kind}', { params: { path: { kind } }, body: { wanted } })),
    onSuccess: useThenAll(),
  });
}

export function useStopMessages(token: string) {
  return useMutation({
    mutationFn: () => ok(api.POST('/api/mail-stops/{token}', { params: { path: { token } } })),
    onSuccess: useThenAll(),
  });
}
