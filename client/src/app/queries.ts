import { QueryClient } from '@tanstack/react-query';
import { Problem } from '@/api/problem';

/** A refusal is an answer: asking again changes nothing. Only a lost connection is tried again. */
const worthAnotherTry = (failures: number, error: Error) =>
  failures < 2 && (!(error instanceof Problem) || error.status === 0);

export const queries = new QueryClient({
  defaultOptions: {
    queries: { staleTime: 30_000, retry: worthAnotherTry },
    // Without a connection it is told at once; nothing is kept back to be booked hours later.
    mutations: { retry: false, networkMode: 'always' },
  },
});
