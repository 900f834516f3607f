import { Text } from '@mantine/core';
import type { Letter } from '@/api/types';
import { fullDate } from '@/components/time/days';
import { momentWords } from '@/components/time/zone';
import { Needs } from '@/components/verdict/mark';
import { termLines } from './words';
import classes from './letters.module.css';

/** What stands about one letter, as far as the reader was given it. */
export function LetterFacts({ letter }: { letter: Letter }) {
  const { issuedBy, issuedOn, expiresOn, terms, refusedBecause, reviewedBy, reviewedAt } = letter;
  const lines = terms == null ? [] : termLines(terms);
  return (
    <>
      <Says letter={letter} />
      {issuedOn != null && (
        <Text size="sm">
          Written {fullDate(issuedOn)}
          {issuedBy != null && ` by ${issuedBy}`}
          {expiresOn != null && `, its own last day ${fullDate(expiresOn)}`}.
        </Text>
      )}
      {lines.length > 0 && (
        <ul className={classes.terms} aria-label="What it asks for">
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {terms != null && lines.length === 0 && <Text size="sm">It asks for nothing special.</Text>}
      {refusedBecause != null && <Text size="sm">Cannot count, because: {refusedBecause}</Text>}
      <Text size="sm" c="dimmed">
        Handed in {momentWords(letter.filedAt)}
        {letter.onPaper && ', on paper'}
        {reviewedBy != null && reviewedAt != null && (
          <>
            ; read by {reviewedBy} {momentWords(reviewedAt)}
          </>
        )}
        .
      </Text>
    </>
  );
}

const Says = ({ letter: { state, says, withdrawn } }: { letter: Letter }) =>
  state === 'counts' && !withdrawn ? (
    <Text fw={600}>{says}</Text>
  ) : (
    <Needs tone="mind">{says}</Needs>
  );
