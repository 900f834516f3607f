import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { clientQueries } from './clients';
import { newKey } from './request-key';
import { sessionsQueries } from './sessions';
import type { DoorAnswer, Roster } from './types';

/** What a booking touches: the client it is for and every list of sessions. */
function useSettle() {
  const queries = useQueryClient();
  return (clientId: number) =>
    Promise.all([
      queries.invalidateQueries({ queryKey: clientQueries.of(clientId) }),
      queries.invalidateQueries({ queryKey: sessionsQueries.all() }),
    ]);
}

export interface Wanted {
  sessionId: number;
  clientId: number;
}

export function useBook() {
  const settle = useSettle();
  return useMutation({
    mutationFn: ({ sessionId, clientId }: Wanted) =>
      ok(
        api.POST('/api/sessions/{sessionId}/bookings', {
          params: {
            path: { sessionId },
            header: { 'Idempotency-Key': newKey() },
          },
          body: { clientId },
        }),
      ),
    onSuccess: (_, { clientId }) => settle(clientId),
  });
}

export function useCancelBooking() {
  const settle = useSettle();
  return useMutation({
    mutationFn: ({ bookingId }: { bookingId: number; clientId: number }) =>
      ok(api.DELETE('/api/bookings/{bookingId}', { params: { path: { bookingId } } })),
    onSuccess: (_, { clientId }) => settle(clientId),
  });
}

interface AtTheDoor {
  bookingId: number;
  /** What she answered; nothing takes the check-in back. */
  answer: DoorAnswer | null;
}

/** Shown at once, and taken back if the server says no. */
export function useCheckIn(sessionId: number) {
  const queries = useQueryClient();
  const { queryKey } = sessionsQueries.roster(sessionId);
  return useMutation({
    mutationFn: ({ bookingId, answer }: AtTheDoor) => {
      const where = { params: { path: { bookingId } } };
      return ok(
        answer !== null
          ? api.POST('/api/bookings/{bookingId}/check-in', { ...where, body: { answer } })
          : api.DELETE('/api/bookings/{bookingId}/check-in', where),
      );
    },
    onMutate: async ({ bookingId, answer }) => {
      await queries.cancelQueries({ queryKey });
      // What is changed ahead of the answer is no fresher word from the server.
      const { data: before, dataUpdatedAt: updatedAt } = queries.getQueryState(queryKey) ?? {};
      queries.setQueryData(queryKey, (roster) => roster && checkedIn(roster, bookingId, answer), {
        updatedAt,
      });
      return { before, updatedAt };
    },
    onError: (_error, _given, context) =>
      queries.setQueryData(queryKey, context?.before, { updatedAt: context?.updatedAt }),
    onSettled: () => queries.invalidateQueries({ queryKey: sessionsQueries.all() }),
  });
}

const checkedIn = (roster: Roster, bookingId: number, answer: DoorAnswer | null): Roster => {
  const now = new Date().toISOString();
  return {
    ...roster,
    people: roster.people.map((person) =>
      person.bookingId === bookingId
        ? {
            ...person,
            checkedInAt: answer === null ? null : (person.checkedInAt ?? now),
            wellAt: answer === 'allWell' ? (person.wellAt ?? now) : null,
          }
        : person,
    ),
  };
};
