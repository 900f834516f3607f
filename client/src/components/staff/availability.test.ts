import { expect, test } from 'vitest';
import { drawn, hoursOf } from './availability';

test('hours drawn and read again are the same hours', () => {
  const hours = [
    { weekday: 1, from: '09:00', to: '12:30', locationId: null },
    { weekday: 1, from: '12:30', to: '14:00', locationId: 2 },
    { weekday: 7, from: '06:00', to: '22:00', locationId: 1 },
  ];
  expect(hoursOf(drawn(hours) ?? new Map())).toEqual(hours);
});

test('neighbours given for the same are one', () => {
  const hours = drawn([
    { weekday: 3, from: '09:00', to: '10:00', locationId: null },
    { weekday: 3, from: '10:00', to: '11:00', locationId: null },
  ]);
  expect(hoursOf(hours ?? new Map())).toEqual([
    { weekday: 3, from: '09:00', to: '11:00', locationId: null },
  ]);
});

test.each([
  ['a quarter of an hour', [{ weekday: 1, from: '09:15', to: '10:00', locationId: null }]],
  ['before six', [{ weekday: 1, from: '05:30', to: '10:00', locationId: null }]],
  [
    'at either of two locations',
    [
      { weekday: 1, from: '09:00', to: '10:00', locationId: 1 },
      { weekday: 1, from: '09:00', to: '10:00', locationId: 2 },
    ],
  ],
])('hours that would lose something are not drawn: %s', (_, hours) => {
  expect(drawn(hours)).toBeNull();
});
