import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import type { paths } from './schema';

type Body<Path extends keyof paths, Method extends 'post' | 'put'> =
  paths[Path] extends Record<Method, { requestBody: { content: { 'application/json': infer B } } }>
    ? B
    : never;

export interface Span {
  from?: string;
  to?: string;
}

export const staffQueries = {
  all: () => ['staff'] as const,
  instructors: () =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'instructors'] as const,
      queryFn: () => ok(api.GET('/api/instructors')),
    }),
  one: (instructorId: number) =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'one', instructorId] as const,
      queryFn: () =>
        ok(api.GET('/api/instructors/{instructorId}', { params: { path: { instructorId } } })),
    }),
  hours: (instructorId: number) =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'hours', instructorId] as const,
      queryFn: () =>
        ok(
          api.GET('/api/instructors/{instructorId}/hours', { params: { path: { instructorId } } }),
        ),
    }),
  sessions: (instructorId: number, span: Span) =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'sessions', instructorId, span] as const,
      queryFn: () =>
        ok(
          api.GET('/api/instructors/{instructorId}/sessions', {
            params: { path: { instructorId }, query: span },
          }),
        ),
    }),
  payOf: (instructorId: number, span: Span) =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'pay', instructorId, span] as const,
      queryFn: () =>
        ok(
          api.GET('/api/instructors/{instructorId}/pay', {
            params: { path: { instructorId }, query: span },
          }),
        ),
    }),
  pay: (span: Span) =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'pay', 'everybody', span] as const,
      queryFn: () => ok(api.GET('/api/pay', { params: { query: span } })),
    }),
  rates: () =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'rates'] as const,
      queryFn: () => ok(api.GET('/api/pay/rates')),
    }),
  travel: () =>
    queryOptions({
      queryKey: [...staffQueries.all(), 'travel'] as const,
      queryFn: () => ok(api.GET('/api/travel')),
    }),
};

/** Where the lines of a span can be had as a file. */
export const payFile = ({ from, to }: Required<Span>, instructorId?: number) =>
  `${instructorId === undefined ? '/api/pay' : `/api/instructors/${instructorId}/pay`}/file?from=${from}&to=${to}`;

export const proofPath = (instructorId: number, qualificationId: number) =>
  `/api/instructors/${instructorId}/qualifications/${qualificationId}/proof`;

function useStaffChange<In, Out>(change: (given: In) => Promise<Out>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSuccess: () => queries.invalidateQueries({ queryKey: staffQueries.all() }),
  });
}

export type InstructorDetails = Body<'/api/instructors/{instructorId}', 'put'>;

export const useChangeInstructor = (instructorId: number) =>
  useStaffChange((body: InstructorDetails) =>
    ok(api.PUT('/api/instructors/{instructorId}', { params: { path: { instructorId } }, body })),
  );

export const useAddInstructor = () =>
  useStaffChange((body: InstructorDetails) => ok(api.POST('/api/instructors', { body })));

export const useAddQualification = (instructorId: number) =>
  useStaffChange((body: { kind: string; issuedOn: string; expiresOn: string }) =>
    ok(
      api.POST('/api/instructors/{instructorId}/qualifications', {
        params: { path: { instructorId } },
        body,
      }),
    ),
  );

export const useWithdrawQualification = (instructorId: number) =>
  useStaffChange((qualificationId: number) =>
    ok(
      api.POST('/api/instructors/{instructorId}/qualifications/{qualificationId}/withdraw', {
        params: { path: { instructorId, qualificationId } },
      }),
    ),
  );

export const useSendProof = (instructorId: number) =>
  useStaffChange(({ qualificationId, file }: { qualificationId: number; file: File }) =>
    ok(
      api.PUT('/api/instructors/{instructorId}/qualifications/{qualificationId}/proof', {
        params: { path: { instructorId, qualificationId } },
        body: file as unknown as string,
        bodySerializer: () => {
          const form = new FormData();
          form.append('file', file);
          return form;
        },
      }),
    ),
  );

export type AvailableHours = Body<
  '/api/instructors/{instructorId}/availability',
  'put'
>['hours'][number];

export const useSetAvailability = (instructorId: number) =>
  useStaffChange((hours: AvailableHours[]) =>
    ok(
      api.PUT('/api/instructors/{instructorId}/availability', {
        params: { path: { instructorId } },
        body: { hours },
      }),
    ),
  );

export const useAddLeave = (instructorId: number) =>
  useStaffChange((body: { from: string; to: string }) =>
    ok(
      api.POST('/api/instructors/{instructorId}/leave', {
        params: { path: { instructorId } },
        body,
      }),
    ),
  );

export const useWithdrawLeave = (instructorId: number) =>
  useStaffChange((leaveId: number) =>
    ok(
      api.DELETE('/api/instructors/{instructorId}/leave/{leaveId}', {
        params: { path: { instructorId, leaveId } },
      }),
    ),
  );

export type Wish = Body<'/api/instructors/{instructorId}/wishes', 'put'>['wishes'][number];

export const useSetWishes = (instructorId: number) =>
  useStaffChange((wishes: Wish[]) =>
    ok(
      api.PUT('/api/instructors/{instructorId}/wishes', {
        params: { path: { instructorId } },
        body: { wishes },
      }),
    ),
  );

export type NewRate = Body<'/api/pay/rates', 'post'>;

export const useAddRate = () =>
  useStaffChange((body: NewRate) => ok(api.POST('/api/pay/rates', { body })));

export const useWithdrawRate = () =>
  useStaffChange((rateId: number) =>
    ok(api.POST('/api/pay/rates/{rateId}/withdraw', { params: { path: { rateId } } })),
  );

export type TravelTime = Body<'/api/travel', 'put'>['times'][number];

export const useSetTravel = () =>
  useStaffChange((times: TravelTime[]) => ok(api.PUT('/api/travel', { body: { times } })));
