import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ok } from './client';
import { Problem } from './problem';
import type { CatalogueFile, CatalogueReport } from './types';

interface NewRules {
  /** Files to put in place of those in force; or the number of a version to go back to. */
  files: CatalogueFile[] | number;
  why: string;
  basedOn: number | null;
  dryRun: boolean;
}

/** A run that finds something wrong answers 422 with the same report as one that does not. */
async function send({ files, why, basedOn, dryRun }: NewRules): Promise<CatalogueReport> {
  const query = { dryRun };
  const asked =
    typeof files === 'number'
      ? api.POST('/api/catalogue/versions/{version}/return', {
          params: { path: { version: files }, query },
          body: { why, basedOn },
        })
      : api.POST('/api/imports/catalogue', {
          params: { query },
          body: { files, why, basedOn },
        });
  const { data, error, response } = await asked.catch(() => {
    throw new Problem(0, {});
  });
  if (data !== undefined) return data;
  if (isReport(error)) return error;
  throw new Problem(response.status, error);
}

const isReport = (body: object | undefined): body is CatalogueReport =>
  body !== undefined && 'faults' in body;

export function useNewRules() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: send,
    onSuccess: (report) => (report.version == null ? undefined : queries.invalidateQueries()),
  });
}

export const usePreviewPolicy = (code: string) =>
  useMutation({
    mutationFn: (value: string | null) =>
      ok(
        api.POST('/api/policies/{code}/preview', {
          params: { path: { code } },
          body: { value },
        }),
      ),
  });

export function useChoosePolicy(code: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: { value: string | null; why: string; confirmed: boolean }) =>
      ok(api.PUT('/api/policies/{code}', { params: { path: { code } }, body })),
    onSuccess: () => queries.invalidateQueries(),
  });
}
