import { useMutation, useQueryClient } from '@tanstack/react-query';
import { clientQueries } from './clients';
import { Problem } from './problem';
import type { ProblemDetails } from './types';

interface Sent {
  file: Blob;
  /** Called with the share of the file sent, 0 to 1. */
  onSent: (share: number) => void;
}

/** Sent by XMLHttpRequest, which alone tells how much of the file has gone. */
const send = (id: number, { file, onSent }: Sent) =>
  new Promise<void>((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/api/clients/${id}/letters`);
    request.upload.onprogress = (sent) => {
      if (sent.lengthComputable) onSent(sent.loaded / sent.total);
    };
    request.onerror = () => reject(new Problem(0, {}));
    request.onload = () => {
      if (request.status === 201) resolve();
      else reject(new Problem(request.status, detailsIn(request.responseText)));
    };
    const form = new FormData();
    form.append('file', file);
    request.send(form);
  });

const detailsIn = (text: string): ProblemDetails => {
  try {
    const body: unknown = JSON.parse(text);
    return typeof body === 'object' && body !== null ? body : {};
  } catch {
    return {};
  }
};

export function useSendLetter(id: number) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (letter: Sent) => send(id, letter),
    onSuccess: () => queries.invalidateQueries({ queryKey: clientQueries.of(id) }),
  });
}
