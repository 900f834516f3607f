import { Alert, Button, Group, Progress, Stack, Text, Title } from '@mantine/core';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { Problem } from '@/api/problem';
import type { AskedQuestion, QuestionSection } from '@/api/types';
import { Refused } from '@/components/states/asked';
import {
  answered,
  areAgreed,
  noneOfTheRest,
  openIn,
  questionOf,
  stepsOf,
  stepToGoOn,
  type Answers,
} from './answers';
import { OneQuestion } from './one-question';
import { openWords, sectionAsks, sectionTitles } from './words';
import classes from './questions.module.css';

interface Props {
  questions: readonly AskedQuestion[];
  answers: Answers;
  today: string;
  onAnswers: (answers: Answers) => void;
  /** Sends them all; rejects with the server's refusal. */
  onSend: () => Promise<void>;
  /** What is asked to be right, shown beside the question, with the way to change it. */
  beside: Partial<Record<QuestionSection, ReactNode>>;
  /** Why they are asked; above the first step. */
  says?: string;
  /** Whether they are saved; below every step. */
  saved?: ReactNode;
}

/** The questions, one section at a time. Nothing is skipped without being said. */
export function QuestionSteps(props: Props) {
  const { questions, answers, today, onAnswers, onSend, beside, says, saved } = props;
  const steps = stepsOf(questions);
  const [at, setAt] = useState(() => stepToGoOn(steps, answers));
  const [refused, setRefused] = useState<unknown>(null);
  const [held, setHeld] = useState(false);
  const [sending, setSending] = useState(false);
  const [pointed, setPointed] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const shown = useRef(at);

  const here = Math.min(at, steps.length - 1);
  const step = steps[here];

  // Whoever reads by ear or keyboard goes on where the eye does.
  useEffect(() => {
    if (pointed !== null) document.getElementById(`q-${pointed}`)?.focus();
    else if (shown.current !== here) {
      window.scrollTo(0, 0);
      heading.current?.focus({ preventScroll: true });
    }
    shown.current = here;
  }, [here, pointed]);

  if (step === undefined) return null;
  const open = openIn(step.questions, answers);
  const openNo = open.filter(({ kind }) => kind === 'yesNo').length;
  const last = here === steps.length - 1;
  const elsewhere = openIn(questions, answers).length - open.length;

  const go = (to: number) => {
    setHeld(false);
    setPointed(null);
    setAt(to);
  };
  const point = (code: string) => {
    const to = steps.findIndex((one) => one.questions.some((question) => question.code === code));
    if (to !== -1) setAt(to);
    setPointed(code);
  };
  const send = () => {
    setRefused(null);
    setPointed(null);
    setSending(true);
    void onSend()
      .catch((error: unknown) => {
        setRefused(error);
        const code = error instanceof Problem ? questionOf(error.fields) : undefined;
        if (code !== undefined) point(code);
      })
      .finally(() => setSending(false));
  };
  const goOn = () => {
    setRefused(null);
    if (open.length > 0) {
      setHeld(true);
      setPointed(null);
    } else if (last) send();
    else go(here + 1);
  };
  const mayLeaveOpen = areAgreed(step.questions, answers);

  return (
    <Stack gap="lg">
      <div>
        <Text size="sm" c="dimmed">
          Step {here + 1} of {steps.length}
        </Text>
        <Progress
          value={((here + 1) / steps.length) * 100}
          size="sm"
          mt={4}
          aria-label="How far you have come"
        />
      </div>
      <Title order={2} ref={heading} tabIndex={-1} className={classes.heading}>
        {sectionTitles[step.section]}
      </Title>
      {here === 0 && says !== undefined && <Text>{says}</Text>}
      {refused !== null && <Refused error={refused} />}
      {sectionAsks[step.section] !== undefined && <Text>{sectionAsks[step.section]}</Text>}
      {beside[step.section]}
      <ul className={classes.list}>
        {step.questions.map((question) => (
          <li
            key={question.code}
            className={classes.question}
            data-open={(held && open.includes(question)) || pointed === question.code || undefined}
          >
            <OneQuestion
              question={question}
              answer={answers[question.code]}
              today={today}
              onAnswer={(answer) => {
                setPointed(null);
                onAnswers(answered(answers, question.code, answer));
              }}
            />
          </li>
        ))}
      </ul>
      {step.questions.some(({ kind }) => kind === 'yesNo') && (
        <None
          open={openNo}
          all={step.questions.filter(({ kind }) => kind === 'yesNo').length}
          onNone={() => {
            setHeld(false);
            onAnswers(noneOfTheRest(step.questions, answers));
          }}
        />
      )}
      {held && open.length > 0 && (
        <Alert color="amber" variant="light" role="alert">
          <Text>
            {openWords(open.length)}{' '}
            {openNo > 0
              ? 'Tick what applies, or say with the button above that none of the others do. Not sure is an answer too.'
              : 'Please tick what is right. If it is not, change it first.'}
          </Text>
          {mayLeaveOpen && !last && (
            <Button variant="default" size="sm" mt="sm" onClick={() => go(here + 1)}>
              Leave it open for now
            </Button>
          )}
        </Alert>
      )}
      {last && elsewhere > 0 && <Elsewhere steps={steps} answers={answers} here={here} onGo={go} />}
      <Group gap="sm">
        <Button size="md" onClick={goOn} loading={sending}>
          {last ? 'Send my answers' : 'Go on'}
        </Button>
        {here > 0 && (
          <Button size="md" variant="default" onClick={() => go(here - 1)} disabled={sending}>
            Back
          </Button>
        )}
      </Group>
      {saved}
    </Stack>
  );
}

/** One press for all that does not apply; it says how many it answers, and touches nothing else. */
function None({ open, all, onNone }: { open: number; all: number; onNone: () => void }) {
  return (
    <div role="status">
      {open === 0 ? (
        <Text fw={600}>Every question here is answered.</Text>
      ) : (
        <Button variant="light" size="md" onClick={onNone} className={classes.none}>
          {open === all ? 'None of these' : `None of the other ${open}`}
        </Button>
      )}
    </div>
  );
}

interface ElsewhereProps {
  steps: ReturnType<typeof stepsOf>;
  answers: Answers;
  here: number;
  onGo: (step: number) => void;
}

function Elsewhere({ steps, answers, here, onGo }: ElsewhereProps) {
  return (
    <div>
      <Text fw={600}>Still open:</Text>
      <Group gap="xs" mt="xs">
        {steps.map(({ section, questions }, index) => {
          const count = openIn(questions, answers).length;
          return index === here || count === 0 ? null : (
            <Button key={section} variant="default" size="sm" onClick={() => onGo(index)}>
              {sectionTitles[section]}: {count}
            </Button>
          );
        })}
      </Group>
    </div>
  );
}
