import { Checkbox, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import type { Question } from '@/api/types';
import { Asked, Empty, Lines, Refused } from '@/components/states/asked';
import { SafetyNote } from '@/components/states/safety-note';
import { MovementMark } from '@/components/verdict/mark';
import { movementWords } from '@/components/verdict/words';
import {
  asksMore,
  compared,
  nothingKnown,
  questionOf,
  type Asking,
  type Compared,
} from './question';
import { Some } from './some';
import { SourceLine } from './source-line';
import { WhatIfForm } from './what-if-form';
import classes from './rules.module.css';

interface Props {
  asking: Asking;
  onAsk: (asking: Asking) => void;
  today: string;
}

/** What would become of each movement for somebody; it is about nobody in particular. */
export function WhatIfView({ asking, onAsk, today }: Props) {
  const question = questionOf(asking, today);
  return (
    <>
      <Text c="dimmed" mb="md" maw="46rem">
        Asks the rules without naming anybody. Nothing is kept; the address of this page is the
        question, so it can be put by or sent on.
      </Text>
      <WhatIfForm asking={asking} onAsk={onAsk} today={today} />
      {question === undefined ? (
        <Empty title="Choose a stage or a due date">
          Then every movement of the class says what becomes of it, and why.
        </Empty>
      ) : (
        <Answer question={question} />
      )}
      <SafetyNote />
    </>
  );
}

function Answer({ question }: { question: Question }) {
  const answer = useQuery(catalogueQueries.whatIf(question));
  const plain = useQuery(catalogueQueries.whatIf(nothingKnown(question)));
  // A refused question keeps the earlier answer in the cache; it must not stand there as if it were this one's.
  if (answer.isError)
    return (
      <div className={classes.answer}>
        <Refused error={answer.error} />
      </div>
    );
  return (
    <Asked query={answer} waiting={<Lines count={6} height={56} />}>
      {({ age, stageName, movements }) => (
        <section aria-labelledby="answer" className={classes.answer} aria-busy={answer.isFetching}>
          <h2 id="answer" className={classes.heading}>
            {stageName}
            {age != null && ` · ${age}`}
          </h2>
          <Movements
            list={compared(movements, plain.data?.movements ?? [])}
            asked={JSON.stringify(question)}
            more={asksMore(question)}
          />
        </section>
      )}
    </Asked>
  );
}

interface MovementsProps {
  list: readonly Compared[];
  asked: string;
  /** More is asked about than stage and day, so there is something to compare with. */
  more: boolean;
}

function Movements({ list, asked, more }: MovementsProps) {
  const [changedOnly, setChangedOnly] = useState(false);
  const changed = list.filter(({ otherwise }) => otherwise !== undefined);
  const shown = more && changedOnly ? changed : list;
  return (
    <>
      <Text role="status">{summary(list, changed.length, more)}</Text>
      {more && (
        <Checkbox
          mt="xs"
          label="Only what changes against nothing known"
          checked={changedOnly}
          onChange={(event) => setChangedOnly(event.currentTarget.checked)}
        />
      )}
      <Some of={`${asked}${String(changedOnly)}`} all={shown} what="movements" most={60}>
        {(some) => (
          <ul className={classes.list} aria-label="Movements">
            {some.map((one) => (
              <OneMovement key={one.movement.position} {...one} />
            ))}
          </ul>
        )}
      </Some>
    </>
  );
}

function OneMovement({ movement, otherwise }: Compared) {
  const { name, verdict, instruction, reasons } = movement;
  return (
    <li className={classes.becomes} data-changed={otherwise !== undefined || undefined}>
      <Text fw={600}>{name}</Text>
      <div>
        <MovementMark verdict={verdict} />
        {instruction !== '' && <Text>{instruction}</Text>}
        {otherwise && (
          <Text size="sm" c="dimmed">
            With nothing known: {movementWords[otherwise.verdict].toLowerCase()}
            {otherwise.instruction !== '' && `, ${otherwise.instruction}`}
          </Text>
        )}
      </div>
      <ul className={classes.reasons} aria-label={`Why: ${name}`}>
        {reasons.map(({ text, source }) => (
          <li key={text}>
            <Text>{text}</Text>
            {source && <SourceLine source={source} />}
          </li>
        ))}
      </ul>
    </li>
  );
}

const summary = (list: readonly Compared[], changed: number, more: boolean) => {
  const asTaught = list.filter(({ movement }) => movement.verdict === 'asTaught').length;
  const all = `${asTaught} of ${list.length} as taught.`;
  if (!more) return all;
  return `${all} ${changed === 0 ? 'Nothing changes' : changed === 1 ? '1 changes' : `${changed} change`} against nothing known.`;
};
