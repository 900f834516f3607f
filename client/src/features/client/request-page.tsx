import { Button, Group, List, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { herLetterQueries } from '@/api/her-letters';
import { useMe } from '@/api/session';
import type { RequestLetter } from '@/api/types';
import { Asked, Empty } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { fullDate, sinceBirth } from '@/components/time/days';
import classes from './request.module.css';

export function RequestPage() {
  const { clientId } = useMe();
  if (clientId == null)
    return (
      <Empty title="This account has no client’s page">The front desk can join the two.</Empty>
    );
  return <Request clientId={clientId} />;
}

/** To be printed and taken to her clinician, who ticks, writes and signs. */
function Request({ clientId }: { clientId: number }) {
  const request = useQuery(herLetterQueries.request(clientId));
  return (
    <main className={classes.paper}>
      <Group className={classes.onScreen} mb="lg">
        <Button onClick={() => window.print()} disabled={request.data === undefined}>
          Print it
        </Button>
        <Go to="/my/letters">Back to my letters</Go>
      </Group>
      <Asked query={request}>{(asked) => <Paper asked={asked} />}</Asked>
    </main>
  );
}

const whereSheIs = ({ age, dueDate, daysSinceBirth }: RequestLetter) =>
  daysSinceBirth != null
    ? `${sinceBirth(daysSinceBirth)} after the birth`
    : [age, dueDate == null ? null : `due ${fullDate(dueDate)}`]
        .filter((part) => part != null)
        .join(', ');

function Paper({ asked }: { asked: RequestLetter }) {
  const conditions = asked.conditions ?? [];
  const where = whereSheIs(asked);
  return (
    <Stack gap="sm">
      <Title>May she take part in exercise classes?</Title>
      <Text>
        {asked.studioName}, {fullDate(asked.on)}
      </Text>
      <Text>
        To the midwife or doctor of <strong>{asked.name}</strong>
        {where !== '' && ` (${where})`}
      </Text>
      {asked.classes.length > 0 && (
        <section>
          <Title order={2}>The classes</Title>
          <List>
            {asked.classes.map(({ name, about, minutes, effort, asks }) => (
              <List.Item key={name}>
                <strong>{name}</strong>, {minutes} minutes, effort up to {effort} of 10. {about}
                {asks.length > 0 && ` It asks for: ${asks.join(', ')}.`}
              </List.Item>
            ))}
          </List>
        </section>
      )}
      <section>
        <Title order={2}>How hard</Title>
        {asked.effortMost != null && (
          <Text>Nobody who is pregnant is asked for more than {asked.effortMost} of 10.</Text>
        )}
        <Text>{asked.talkTest}</Text>
        {asked.heartRate != null && <Text>Heart rate: {asked.heartRate.says} beats a minute.</Text>}
      </section>
      {conditions.length > 0 && (
        <section>
          <Title order={2}>Please speak to these</Title>
          <List>
            {conditions.map((condition) => (
              <List.Item key={condition}>{condition}</List.Item>
            ))}
          </List>
        </section>
      )}
      <section>
        <Title order={2}>Your answer</Title>
        <ToTick
          options={[
            'She may take part',
            'She may take part, leaving out what is ticked',
            'She may not take part for now',
          ]}
        />
        <Title order={3} mt="sm">
          Positions to leave out
        </Title>
        <ToTick options={asked.positions} />
        <Title order={3} mt="sm">
          Movements to leave out
        </Title>
        <ToTick options={asked.demands} />
      </section>
      {[
        'Most effort, of 10',
        'Highest heart rate, beats a minute',
        'Anything else',
        'Counts until',
        'Name, place and date',
        'Signature',
      ].map((words) => (
        <div key={words} className={classes.line}>
          {words}:
        </div>
      ))}
    </Stack>
  );
}

const ToTick = ({ options }: { options: readonly string[] }) => (
  <ul className={classes.choices}>
    {options.map((option) => (
      <li key={option}>
        <span className={classes.box} aria-hidden="true" />
        {option}
      </li>
    ))}
  </ul>
);
