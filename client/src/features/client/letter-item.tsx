import { Anchor, Text } from '@mantine/core';
import { letterFile } from '@/api/letters';
import type { Letter } from '@/api/types';
import { fullDate } from '@/components/time/days';
import { momentWords } from '@/components/time/zone';
import { Needs } from '@/components/verdict/mark';
import classes from './my.module.css';

const endings: Record<string, string> = {
  'application/pdf': 'pdf',
  'image/jpeg': 'jpg',
  'image/png': 'png',
};

/** One letter of hers: what it means today, what was read off it, or why it cannot count. */
export function LetterItem({ letter }: { letter: Letter }) {
  const { state, says, filedAt, onPaper, mediaType, issuedBy, issuedOn, expiresOn } = letter;
  const refused = state === 'refused';
  return (
    <li className={classes.reason}>
      <Text fw={600}>{refused || letter.withdrawn ? <Needs tone="mind">{says}</Needs> : says}</Text>
      {refused && letter.refusedBecause != null && <Text>Why: {letter.refusedBecause}</Text>}
      {issuedBy != null && issuedOn != null && (
        <Text>
          By {issuedBy}, written on {fullDate(issuedOn)}
          {expiresOn != null && `, valid until ${fullDate(expiresOn)} by its own words`}.
        </Text>
      )}
      {letter.terms != null && <Terms terms={letter.terms} />}
      <Text size="sm" c="dimmed">
        {onPaper ? 'Handed in on paper' : 'Sent'} {momentWords(filedAt)}
        {letter.reviewedBy != null &&
          letter.reviewedAt != null &&
          `; read by ${letter.reviewedBy} ${momentWords(letter.reviewedAt)}`}
      </Text>
      {!onPaper && mediaType != null && (
        <Anchor
          href={letterFile({ clientId: letter.clientId, letterId: letter.id })}
          // A PDF is shown by the phone's own reader; the page's browser may not open one safely.
          {...(mediaType === 'application/pdf'
            ? { download: `letter-${letter.id}.${endings[mediaType] ?? 'pdf'}` }
            : { target: '_blank', rel: 'noreferrer' })}
        >
          {mediaType === 'application/pdf' ? 'Save the file' : 'Open the picture'}
        </Anchor>
      )}
    </li>
  );
}

function Terms({ terms }: { terms: NonNullable<Letter['terms']> }) {
  const asks = [
    terms.leaveOutWords.length > 0 && `leave out ${terms.leaveOutWords.join(', ')}`,
    terms.effortMost != null && `effort up to ${terms.effortMost} of 10`,
    terms.heartRateMost != null && `heart rate up to ${terms.heartRateMost} beats a minute`,
  ].filter((part) => part !== false);
  return (
    <>
      <Text>
        {asks.length === 0
          ? 'It asks for nothing special.'
          : `What was read off it: ${asks.join('; ')}.`}
      </Text>
      {terms.words != null && <Text>For your instructor: {terms.words}</Text>}
      {terms.replacesEarlier && <Text>It takes the place of earlier letters.</Text>}
    </>
  );
}
