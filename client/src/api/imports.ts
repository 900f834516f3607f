import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Problem } from './problem';
import type { ImportReport } from './types';

interface Upload {
  file: Blob;
  dryRun: boolean;
  /** Called with the share of the file sent, 0 to 1. */
  onSent: (share: number) => void;
}

/** Sent by XMLHttpRequest, which alone tells how much of the file has gone. */
function send({ file, dryRun, onSent }: Upload): Promise<ImportReport> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/api/imports/clients?dryRun=${String(dryRun)}`);
    request.setRequestHeader('Content-Type', 'text/csv');
    request.upload.onprogress = (sent) => {
      if (sent.lengthComputable) onSent(sent.loaded / sent.total);
    };
    request.onerror = () => reject(new Problem(0, {}));
    request.onload = () => {
      const body = parsed(request.responseText);
      if (isReport(body)) resolve(body);
      else reject(new Problem(request.status, body));
    };
    request.send(file);
  });
}

const parsed = (text: string): object => {
  try {
    return JSON.parse(text) as object;
  } catch {
    return {};
  }
};

const isReport = (body: object): body is ImportReport => 'rowsRead' in body;

export function useImportClients() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: send,
    onSuccess: (report) => (report.dryRun ? undefined : queries.invalidateQueries()),
  });
}
