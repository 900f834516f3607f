import { Button, Text, Textarea, Title } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { useRefuseLetter, useReviewLetter } from '@/api/letters';
import { Problem } from '@/api/problem';
import type { Letter } from '@/api/types';
import { SubmitRow } from '@/components/forms/submit-row';
import { LetterFile } from '@/components/letters/letter-file';
import { ReviewForm } from '@/components/letters/review-form';
import { Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { fullDate } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { tell } from '@/components/states/told';
import classes from './letters.module.css';

interface Props {
  letter: Letter;
  /** It is read: on to the next. */
  onDone: () => void;
}

/** One letter and, beside it, what is read off it. */
export function OneLetter({ letter, onDone }: Props) {
  const key = { clientId: letter.clientId, letterId: letter.id };
  const review = useReviewLetter(key);
  const heading = useRef<HTMLHeadingElement>(null);
  // Whoever works through them by keyboard goes on at the next one's beginning.
  useEffect(() => heading.current?.focus(), []);
  return (
    <section aria-labelledby="letter">
      <Title order={2} id="letter" ref={heading} tabIndex={-1}>
        {letter.name}
      </Title>
      <Go to="/letters/people/$clientId" params={{ clientId: String(letter.clientId) }} size="sm">
        All her letters
      </Go>
      {letter.heldSince != null && (
        <Needs tone="stop">
          Her bookings are on hold since {fullDate(letter.heldSince)}: only a letter written on that
          day or later lifts it.
        </Needs>
      )}
      <div className={classes.sides}>
        <LetterFile letter={letter} />
        <div>
          <ReviewForm
            label="Save: it counts"
            send={(body) => review.mutateAsync(body)}
            busy={review.isPending}
            error={review.error}
            onDone={() => {
              tell(`${letter.name}’s letter counts.`);
              onDone();
            }}
          />
          <CannotCount letter={letter} onDone={onDone} />
        </div>
      </div>
    </section>
  );
}

function CannotCount({ letter, onDone }: Props) {
  const refuse = useRefuseLetter({ clientId: letter.clientId, letterId: letter.id });
  const [open, setOpen] = useState(false);
  const [because, setBecause] = useState('');
  const fields = refuse.error instanceof Problem ? refuse.error.fields : {};
  return (
    <div className={classes.refuse}>
      {open ? (
        <form
          aria-label="Why it cannot count"
          onSubmit={(event) => {
            event.preventDefault();
            void refuse.mutateAsync(because.trim()).then(
              () => {
                tell(`${letter.name} is told why her letter cannot count.`);
                onDone();
              },
              () => undefined,
            );
          }}
        >
          <Refused error={refuse.error} />
          <Textarea
            label="It cannot count, because"
            description="She reads this. Say what a new letter needs."
            maxLength={500}
            autosize
            minRows={2}
            required
            data-autofocus
            value={because}
            onChange={(event) => setBecause(event.currentTarget.value)}
            error={fields.because}
          />
          <SubmitRow
            label="It cannot count"
            busy={refuse.isPending}
            disabled={because.trim() === ''}
            onCancel={() => setOpen(false)}
          />
        </form>
      ) : (
        <>
          <Text size="sm" c="dimmed" mb="xs">
            Not signed, not hers, not readable?
          </Text>
          <Button variant="default" onClick={() => setOpen(true)}>
            It cannot count …
          </Button>
        </>
      )}
    </div>
  );
}
