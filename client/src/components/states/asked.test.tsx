// @vitest-environment jsdom
import { MantineProvider } from '@mantine/core';
import type { UseQueryResult } from '@tanstack/react-query';
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, expect, it, vi } from 'vitest';
import { Problem } from '@/api/problem';
import { Asked } from './asked';

afterEach(cleanup);

/** What was answered first, and how it was answered when it was asked again. */
const askedAgain = (error: Error | null) => {
  const query = {
    data: 'Ragna',
    error,
    isError: error !== null,
    refetch: vi.fn(),
  } as unknown as UseQueryResult<string>;
  render(
    <MantineProvider>
      <Asked query={query}>{(name) => <p>{name}</p>}</Asked>
    </MantineProvider>,
  );
};

it('keeps what is there while the server cannot be reached', () => {
  askedAgain(new Problem(0, {}));
  expect(screen.queryByText('Ragna')).not.toBeNull();
});

it.each([403, 404])('takes away what is refused with %i when it is asked again', (status) => {
  askedAgain(new Problem(status, { detail: 'There is no such client.' }));
  expect(screen.queryByText('Ragna')).toBeNull();
  expect(screen.getByRole('alert').textContent).toContain('There is no such client.');
});
