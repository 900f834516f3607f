import { Button, Text } from '@mantine/core';
import { useState } from 'react';
import type { ClassNote } from '@/api/types';
import { fullDate } from '@/components/time/days';
import classes from './notes.module.css';

const atFirst = 3;

interface Props {
  notes: readonly ClassNote[];
  /** What a reader may do with one. */
  act?: (note: ClassNote) => React.ReactNode;
}

/** What was seen in earlier classes: the last few, older ones behind a button. */
export function NoteList({ notes, act }: Props) {
  const [all, setAll] = useState(false);
  const shown = all ? notes : notes.slice(0, atFirst);
  return (
    <>
      <ul className={classes.list}>
        {shown.map((note) => (
          <li key={note.id}>
            <Text size="sm" c="dimmed">
              {fullDate(note.on)}, {note.className} · {note.by}
              {note.changedAt != null && ' · changed since'}
            </Text>
            <p className={classes.words} lang="">
              {note.text}
            </p>
            {act?.(note)}
          </li>
        ))}
      </ul>
      {notes.length > shown.length && (
        <Button variant="default" size="xs" onClick={() => setAll(true)}>
          Earlier ({notes.length - shown.length})
        </Button>
      )}
    </>
  );
}
