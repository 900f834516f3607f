import { Button, Checkbox, Group, Text } from '@mantine/core';
import { useState } from 'react';
import type { Answer, AskedQuestion } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import classes from './questions.module.css';

interface Props {
  question: AskedQuestion;
  answer?: Answer;
  today: string;
  onAnswer: (answer: Answer | undefined) => void;
}

/** Ticked is yes; beside it "not sure". A no comes only from the button at the end of the section. */
export function YesNo({ question, answer, today, onAnswer }: Props) {
  const yes = answer?.value === 'yes';
  const unsure = answer?.value === 'unsure';
  return (
    <>
      <Checkbox
        id={`q-${question.code}`}
        label={question.asks}
        description={question.help === '' ? undefined : question.help}
        checked={yes}
        onChange={({ currentTarget }) =>
          onAnswer(currentTarget.checked ? { value: 'yes' } : undefined)
        }
      />
      <div className={classes.beside}>
        <Group gap="md" mih="1.75rem">
          <Checkbox
            size="sm"
            label="Not sure"
            aria-label={`Not sure: ${question.asks}`}
            checked={unsure}
            onChange={({ currentTarget }) =>
              onAnswer(currentTarget.checked ? { value: 'unsure' } : undefined)
            }
          />
          {answer?.value === 'no' && (
            <Text component="span" size="sm" fw={600}>
              Answered: no
            </Text>
          )}
        </Group>
        {yes && <Since question={question} answer={answer} today={today} onAnswer={onAnswer} />}
      </div>
    </>
  );
}

/** Since when, for whoever knows. */
function Since({ question, answer, today, onAnswer }: Required<Props>) {
  const [shown, setShown] = useState(answer.since != null);
  if (!shown)
    return (
      <Button
        variant="transparent"
        size="compact-sm"
        px={0}
        aria-label={`Say since when: ${question.asks}`}
        onClick={() => setShown(true)}
      >
        Say since when
      </Button>
    );
  return (
    <DayInput
      label="Since, if you know"
      aria-label={`Since: ${question.asks}`}
      size="sm"
      minDate="1900-01-01"
      maxDate={today}
      value={answer.since ?? null}
      onChange={(since) => onAnswer(since === null ? { value: 'yes' } : { value: 'yes', since })}
    />
  );
}
