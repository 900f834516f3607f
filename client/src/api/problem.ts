import type { ProblemDetails } from './types';

/** A refusal in the server's own words. `code` is stable; `fields` holds messages by form field. */
export class Problem extends Error {
  readonly status: number;
  readonly code: string;
  readonly fields: Record<string, string>;

  constructor(status: number, details: ProblemDetails) {
    super(details.detail ?? details.title ?? wordsFor(status));
    this.name = 'Problem';
    this.status = status;
    this.code = details.code ?? `http-${status}`;
    this.fields = Object.fromEntries(
      Object.entries(details.errors ?? {}).map(([field, messages]) => [
        camel(field),
        messages.join(' '),
      ]),
    );
  }
}

/** Validation names a field as its C# property does; forms name it as the JSON does. */
const camel = (path: string) =>
  path
    .split('.')
    .map((part) => part.charAt(0).toLowerCase() + part.slice(1))
    .join('.');

const wordsFor = (status: number) =>
  status === 0
    ? 'The studio’s server cannot be reached. Nothing was changed.'
    : status === 401
      ? 'Please sign in again.'
      : status === 404
        ? 'There is nothing here, or it is not yours to see.'
        : 'Something went wrong on the server. Nothing was changed.';

/** What a person is told about any failure. */
export const wordsOf = (error: unknown) =>
  error instanceof Problem
    ? error.message
    : 'Something went wrong in this page. Load it again; nothing was lost on the server.';
