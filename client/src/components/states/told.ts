import { notifications } from '@mantine/notifications';
import { wordsOf } from '@/api/problem';

/** A word at the foot of the page about what was just done. */
export const tell = (message: string) =>
  notifications.show({ message, color: 'leaf', autoClose: 5000, withBorder: true });

export const tellRefused = (error: unknown) =>
  notifications.show({
    message: wordsOf(error),
    color: 'brick',
    autoClose: 9000,
    withBorder: true,
    role: 'alert',
  });
