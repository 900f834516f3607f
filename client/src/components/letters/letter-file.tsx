import { Anchor, Text } from '@mantine/core';
import { letterFile } from '@/api/letters';
import type { Letter } from '@/api/types';
import classes from './letters.module.css';

/** The letter as it was handed in. Opening it is noted in her record. */
export function LetterFile({ letter }: { letter: Letter }) {
  if (letter.mediaType == null)
    return (
      <div className={classes.onPaper}>
        <Text fw={600}>This one is on paper.</Text>
        <Text>It lies at the desk, with the letters to be read. There is no file of it.</Text>
      </div>
    );
  const url = letterFile({ clientId: letter.clientId, letterId: letter.id });
  const name = `The letter of ${letter.name}`;
  return (
    <div>
      {letter.mediaType === 'application/pdf' ? (
        <iframe src={`${url}#navpanes=0`} title={name} className={classes.pdf} />
      ) : (
        <img src={url} alt={name} className={classes.image} />
      )}
      <Anchor href={url} target="_blank" rel="noopener" size="sm">
        Open in a new tab
      </Anchor>
    </div>
  );
}
