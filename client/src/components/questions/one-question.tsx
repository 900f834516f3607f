import { Checkbox, Textarea } from '@mantine/core';
import type { Answer, AskedQuestion } from '@/api/types';
import { YesNo } from './yes-no';

interface Props {
  question: AskedQuestion;
  answer?: Answer;
  today: string;
  onAnswer: (answer: Answer | undefined) => void;
}

const mostLetters = 500;

/** One question, by the way it is answered. */
export function OneQuestion({ question, answer, today, onAnswer }: Props) {
  const { code, kind, asks, help } = question;
  switch (kind) {
    case 'yesNo':
      return <YesNo question={question} answer={answer} today={today} onAnswer={onAnswer} />;
    case 'agree':
    case 'confirm':
      return (
        <Checkbox
          id={`q-${code}`}
          label={asks}
          description={help === '' ? undefined : help}
          checked={answer !== undefined}
          onChange={({ currentTarget }) =>
            onAnswer(
              currentTarget.checked ? { value: kind === 'agree' ? 'agreed' : 'right' } : undefined,
            )
          }
        />
      );
    case 'text':
      return (
        <Textarea
          id={`q-${code}`}
          label={asks}
          description={help === '' ? undefined : help}
          autoComplete="off"
          autosize
          minRows={2}
          maxLength={mostLetters}
          value={answer?.value ?? ''}
          onChange={({ currentTarget: { value } }) =>
            onAnswer(value === '' ? undefined : { value })
          }
        />
      );
  }
}
