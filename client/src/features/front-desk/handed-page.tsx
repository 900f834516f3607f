import { Button, Group, Stack, Text, Title } from '@mantine/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { clientQueries } from '@/api/clients';
import { screeningQueries, useAnswerScreening } from '@/api/screenings';
import { useMe } from '@/api/session';
import type { ClientCard, ScreeningForm } from '@/api/types';
import { carriedOver, type Answers } from '@/components/questions/answers';
import { herFacts } from '@/components/questions/her-facts';
import { QuestionSteps } from '@/components/questions/question-steps';
import { Asked, Lines } from '@/components/states/asked';
import { GoButton } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { Problem } from '@/api/problem';
import classes from '@/components/questions/questions.module.css';

const route = getRouteApi('/alone/desk/clients/$clientId/questions');

type Stage = { is: 'handing' | 'asking' } | { is: 'done'; says: string };

/**
 * A tablet of the desk, turned to her. Her answers live in this page's memory alone and are gone once they are sent, once
 * she stops, and once anybody leaves the page.
 */
export function HandedPage() {
  const clientId = Number(route.useParams().clientId);
  return <Handed key={clientId} clientId={clientId} />;
}

function Handed({ clientId }: { clientId: number }) {
  const card = useQuery(clientQueries.card(clientId));
  const [stage, setStage] = useState<Stage>({ is: 'handing' });
  const queries = useQueryClient();
  const over = (next: Stage) => {
    setStage(next);
    queries.removeQueries({ queryKey: screeningQueries.form(clientId).queryKey });
  };
  // A page that the browser keeps to come back to is kept without them.
  useEffect(() => {
    const leave = () => setStage({ is: 'handing' });
    window.addEventListener('pagehide', leave);
    return () => window.removeEventListener('pagehide', leave);
  }, []);
  return (
    <main className={classes.handed}>
      <Asked query={card} waiting={<Lines count={4} height={72} />}>
        {(her) => (
          <>
            {stage.is === 'handing' && (
              <HandOver her={her} onBegin={() => setStage({ is: 'asking' })} />
            )}
            {stage.is === 'asking' && (
              <Questions
                her={her}
                onStop={() => over({ is: 'handing' })}
                onSent={(says) => over({ is: 'done', says })}
              />
            )}
            {stage.is === 'done' && <HandBack her={her} says={stage.says} />}
            <SafetyNote locationId={her.homeLocationId} />
          </>
        )}
      </Asked>
    </main>
  );
}

function HandOver({ her, onBegin }: { her: ClientCard; onBegin: () => void }) {
  return (
    <Stack gap="lg">
      <Title>Hand the tablet to {her.called}</Title>
      <Text size="lg">
        She answers the health questions by herself. You do not see her answers, neither now nor
        later; you hear only whether something more is needed.
      </Text>
      <Text size="lg">
        {her.called}: nothing you tick stays on this tablet. If you would rather answer at home,
        your own page asks the same.
      </Text>
      <Group>
        <Button size="lg" onClick={onBegin}>
          I have it: begin
        </Button>
        <BackToCard her={her}>Back to the card</BackToCard>
      </Group>
    </Stack>
  );
}

interface QuestionsProps {
  her: ClientCard;
  onStop: () => void;
  onSent: (says: string) => void;
}

function Questions(props: QuestionsProps) {
  const form = useQuery({
    ...screeningQueries.form(props.her.id),
    staleTime: Infinity,
    refetchOnWindowFocus: false,
  });
  return (
    <Asked query={form} waiting={<Lines count={4} height={72} />}>
      {(asked) => <Asking {...props} form={asked} />}
    </Asked>
  );
}

function Asking({ her, form, onStop, onSent }: QuestionsProps & { form: ScreeningForm }) {
  const { today } = useMe();
  const queries = useQueryClient();
  const [asked, setAsked] = useState(form);
  const [answers, setAnswers] = useState<Answers>({});
  const answer = useAnswerScreening(her.id);
  const send = async () => {
    try {
      const { says } = await answer.mutateAsync({ version: asked.version, answers });
      answer.reset();
      onSent(says);
    } catch (error) {
      answer.reset();
      if (
        error instanceof Problem &&
        (error.code === 'questions-changed' || error.code === 'not-asked')
      ) {
        const fresh = await queries.query({ ...screeningQueries.form(her.id), staleTime: 0 });
        setAnswers(carriedOver(answers, asked.questions, fresh.questions));
        setAsked(fresh);
      }
      throw error;
    }
  };
  return (
    <Stack gap="lg">
      <Group justify="space-between">
        <Title>Health questions</Title>
        <Button variant="default" onClick={onStop}>
          Stop and clear my answers
        </Button>
      </Group>
      <QuestionSteps
        questions={asked.questions}
        answers={answers}
        today={today}
        onAnswers={setAnswers}
        onSend={send}
        beside={herFacts(
          her,
          <Text size="sm">If this is not right, stop here and tell the front desk.</Text>,
        )}
        saved={
          <Text size="sm" c="dimmed">
            Your answers stay on this page until you send them. Nobody at the desk sees them.
          </Text>
        }
      />
    </Stack>
  );
}

function HandBack({ her, says }: { her: ClientCard; says: string }) {
  return (
    <Stack gap="lg" role="status">
      <Title>Thank you. Please hand the tablet back.</Title>
      <Text size="lg">{says}</Text>
      <Text size="lg">
        {her.called}: your answers are gone from this tablet, and your own page tells you what came
        of them. If you feel unwell now, say so.
      </Text>
      <div>
        <BackToCard her={her}>Back to the card</BackToCard>
      </div>
    </Stack>
  );
}

const BackToCard = ({ her, children }: { her: ClientCard; children: string }) => (
  <GoButton
    size="lg"
    variant="default"
    to="/desk/clients/$clientId"
    params={{ clientId: String(her.id) }}
    replace
  >
    {children}
  </GoButton>
);
