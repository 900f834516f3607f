import { Text } from '@mantine/core';
import { IconCheck } from '@tabler/icons-react';
import type { Saving } from './use-kept-answers';
import classes from './my.module.css';

const words: Record<Saving, string> = {
  nothing: 'Nothing is kept before you agree.',
  waiting: 'Saving',
  saving: 'Saving',
  saved: 'Saved. You can stop here and go on another time.',
  lost: 'Not saved yet: your answers stay on this page until the connection is back.',
  refused: 'Not saved yet. Your answers stay on this page; the next one you give is tried again.',
};

export const SavedLine = ({ saving }: { saving: Saving }) => (
  <Text size="sm" role="status" className={classes.saved}>
    {saving === 'saved' && <IconCheck size={16} stroke={2.5} aria-hidden />}
    {words[saving]}
  </Text>
);
