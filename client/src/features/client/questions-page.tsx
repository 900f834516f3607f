import { Alert, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { clientQueries } from '@/api/clients';
import { screeningQueries, useAnswerScreening } from '@/api/screenings';
import { useMe } from '@/api/session';
import type { ClientCard, ScreeningAnswer, ScreeningForm } from '@/api/types';
import { herFacts } from '@/components/questions/her-facts';
import { QuestionSteps } from '@/components/questions/question-steps';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { SavedLine } from './saved-line';
import { useKeptAnswers } from './use-kept-answers';
import { WhatCame } from './what-came';
import classes from './my.module.css';

export function QuestionsPage() {
  const { clientId, today } = useMe();
  if (clientId == null)
    return (
      <Empty title="This account has no client’s page">The front desk can join the two.</Empty>
    );
  return <HerQuestions clientId={clientId} today={today} />;
}

function HerQuestions({ clientId, today }: { clientId: number; today: string }) {
  const card = useQuery(clientQueries.card(clientId));
  // Always from the server: she may have gone on somewhere else meanwhile.
  const form = useQuery({
    ...screeningQueries.form(clientId),
    staleTime: 0,
    refetchOnWindowFocus: false,
  });
  const [came, setCame] = useState<ScreeningAnswer | null>(null);
  return (
    <div className={classes.page}>
      <Asked query={card} waiting={<Lines count={4} height={72} />}>
        {(her) => (
          <>
            {her.phase === 'ended' ? (
              <Empty title="Nothing is asked of you here" />
            ) : came !== null ? (
              <WhatCame came={came} />
            ) : form.isFetchedAfterMount || form.isError ? (
              <Asked query={form} waiting={<Lines count={4} height={72} />}>
                {(asked) => <Asking her={her} form={asked} today={today} onDone={setCame} />}
              </Asked>
            ) : (
              <Lines count={4} height={72} />
            )}
            <SafetyNote locationId={her.homeLocationId} />
          </>
        )}
      </Asked>
    </div>
  );
}

interface AskingProps {
  her: ClientCard;
  form: ScreeningForm;
  today: string;
  onDone: (came: ScreeningAnswer) => void;
}

function Asking({ her, form, today, onDone }: AskingProps) {
  const { asked, answers, saving, changed, change, send } = useKeptAnswers(her.id, form);
  const answer = useAnswerScreening(her.id);
  return (
    <Stack gap="lg">
      <Title>Health questions</Title>
      {changed && (
        <Alert color="amber" variant="light" role="alert">
          <Text>
            The questions have changed since you began. Your answers are kept wherever the question
            is the same; the others are open again.
          </Text>
        </Alert>
      )}
      <QuestionSteps
        key={asked.version}
        questions={asked.questions}
        answers={answers}
        today={today}
        onAnswers={change}
        onSend={() => send((given) => answer.mutateAsync(given).then(onDone))}
        says={asked.says}
        beside={herFacts(her, <Go to="/my/details">Change it under “About me”</Go>)}
        saved={<SavedLine saving={saving} />}
      />
    </Stack>
  );
}
