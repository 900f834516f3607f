import { notifications } from '@mantine/notifications';
import { wordsOf } from '@/api/problem';

/** What every word at the foot of the page has: an edge, and a cross that says what it does. */
export const slip = {
  withBorder: true,
  closeButtonProps: { 'aria-label': 'Put this away' },
} as const;

/** A word at the foot of the page about what was just done. */
export const tell = (message: string) =>
  notifications.show({ ...slip, message, color: 'leaf', autoClose: 5000 });

export const tellRefused = (error: unknown) =>
  notifications.show({
    ...slip,
    message: wordsOf(error),
    color: 'brick',
    autoClose: 9000,
    role: 'alert',
  });
