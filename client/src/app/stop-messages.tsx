import { Button, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { messageQueries, useStopMessages } from '@/api/messages';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import classes from './sign-in.module.css';

const route = getRouteApi('/mail/stop/$token');

/** Where the link in a message leads: one press, signed in or not. */
export function StopMessages() {
  const { token } = route.useParams();
  const asked = useQuery(messageQueries.stop(token));
  const stop = useStopMessages(token);
  return (
    <main className={classes.page}>
      <div className={classes.tape} aria-hidden="true" />
      <div className={classes.sheet}>
        <Title mb="md">Stop messages</Title>
        <Asked query={asked} waiting={<Lines count={2} />}>
          {({ title, stopped }) =>
            stopped || stop.isSuccess ? (
              <Text role="status">
                Messages “{title}” are not sent to you any more. News of what is booked for you
                still comes.
              </Text>
            ) : (
              <Stack align="flex-start">
                <Text>
                  You will get no more messages “{title}”. News of what is booked for you still
                  comes.
                </Text>
                <Button size="md" loading={stop.isPending} onClick={() => stop.mutate()}>
                  Stop these messages
                </Button>
                <Refused error={stop.error} />
              </Stack>
            )
          }
        </Asked>
        <Text mt="xl">
          <Go to="/">To the studio</Go>, where you choose what you receive.
        </Text>
      </div>
    </main>
  );
}
