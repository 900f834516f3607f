import createClient from 'openapi-fetch';
import { connection } from './connection';
import { Problem } from './problem';
import type { paths } from './schema';
import type { ProblemDetails } from './types';

export const api = createClient<paths>({ baseUrl: '' });

interface Answer<T> {
  data?: T;
  error?: unknown;
  response: Response;
}

/** The body of a good answer; a refusal is thrown as a {@link Problem}. */
export async function ok<T>(asked: Promise<Answer<T>>): Promise<T> {
  let answer: Answer<T>;
  try {
    answer = await asked;
  } catch {
    connection.lose();
    throw new Problem(0, {});
  }
  connection.found();
  if (answer.response.ok) return answer.data as T;
  throw new Problem(answer.response.status, detailsOf(answer.error));
}

const detailsOf = (body: unknown): ProblemDetails =>
  typeof body === 'object' && body !== null ? body : {};
