import { Anchor, Button, Group, Modal, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { letterFile, letterQueries, useReadPaperLetter } from '@/api/letters';
import { useMe } from '@/api/session';
import type { Letter } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { momentWords } from '@/components/time/zone';
import { LetterFacts } from './letter-facts';
import { ReviewForm } from './review-form';
import { WithdrawLetter } from './withdraw-letter';
import classes from './letters.module.css';

interface Props {
  clientId: number;
  /** Where the page lies that asks her clinician for one. */
  request: ReactNode;
}

/** Her letters: for the desk that they are there, for whoever reads letters what stands in them. */
export function LettersOf({ clientId, request }: Props) {
  const { roles } = useMe();
  const letters = useQuery(letterQueries.of(clientId));
  const [reading, setReading] = useState(false);
  const paper = useReadPaperLetter(clientId);
  const reads = roles.includes('owner') || roles.includes('reviewer');
  return (
    <section aria-labelledby="letters">
      <Title order={2} id="letters">
        Letters
      </Title>
      <Asked query={letters} waiting={<Lines count={2} />}>
        {(list) =>
          list.length === 0 ? (
            <Text c="dimmed">None was handed in yet.</Text>
          ) : (
            <ul className={classes.list}>
              {list.map((letter) => (
                <li key={letter.id}>
                  <LetterFacts letter={letter} />
                  {reads && <Acts letter={letter} />}
                </li>
              ))}
            </ul>
          )
        }
      </Asked>
      <Group mt="sm" gap="md">
        {request}
        {reads && (
          <Button variant="default" onClick={() => setReading(true)}>
            Read a paper letter
          </Button>
        )}
      </Group>
      <Modal
        opened={reading}
        onClose={() => setReading(false)}
        title="A letter on paper, filed and read in one"
        size="lg"
      >
        <ReviewForm
          label="Save: it counts"
          send={(review) => paper.mutateAsync(review)}
          busy={paper.isPending}
          error={paper.error}
          onDone={() => {
            setReading(false);
            tell('The letter counts. Put the paper where only those who read letters find it.');
          }}
          onCancel={() => setReading(false)}
        />
      </Modal>
    </section>
  );
}

function Acts({ letter }: { letter: Letter }) {
  const key = { clientId: letter.clientId, letterId: letter.id };
  return (
    <Group gap="md" mt={4}>
      {letter.mediaType != null && (
        <Anchor
          href={letterFile(key)}
          target="_blank"
          rel="noopener"
          size="sm"
          aria-label={`Open the letter handed in ${momentWords(letter.filedAt)} in a new tab`}
        >
          Open in a new tab
        </Anchor>
      )}
      <WithdrawLetter letter={letter} />
    </Group>
  );
}
