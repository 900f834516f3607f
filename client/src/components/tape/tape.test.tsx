// @vitest-environment jsdom
import { MantineProvider } from '@mantine/core';
import { render, screen } from '@testing-library/react';
import { expect, it, vi } from 'vitest';
import { Tape } from './tape';

vi.mock('@mantine/hooks', async (original) => ({
  ...(await original<typeof import('@mantine/hooks')>()),
  useElementSize: () => ({ ref: { current: null }, width: 900, height: 0 }),
}));

const booking = (bookingId: number, verdict: 'suitable' | 'notSuitable') => ({
  bookingId,
  sessionId: bookingId,
  on: '2027-03-05',
  className: 'Steady strength',
  verdict,
  status: 'booked' as const,
});

it('draws a mark of its own shape for each verdict, and says it in words too', () => {
  const { container } = render(
    <MantineProvider>
      <Tape
        name="Your time"
        age="23w 5d"
        tape={{
          start: '2026-09-18',
          end: '2027-12-24',
          today: '2027-03-03',
          dueDate: '2027-06-25',
          bornOn: null,
          bands: [],
          letters: [],
          bookings: [booking(1, 'suitable'), booking(2, 'notSuitable')],
        }}
      />
    </MantineProvider>,
  );
  const marks = [...container.querySelectorAll('[data-verdict]')];
  expect(marks.map((mark) => mark.getAttribute('data-verdict'))).toEqual([
    'suitable',
    'notSuitable',
  ]);
  expect(marks[0]?.querySelector('svg')?.innerHTML).not.toBe(
    marks[1]?.querySelector('svg')?.innerHTML,
  );
  expect(screen.getByRole('img', { name: /Your time/ })).toBeInTheDocument();
  expect(screen.getByText(/Steady strength, booked, does not suit/)).toBeInTheDocument();
});
