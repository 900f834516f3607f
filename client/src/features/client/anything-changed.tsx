import { Button, Group, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { screeningQueries, useNothingChanged } from '@/api/screenings';
import { Refused } from '@/components/states/asked';
import { GoButton } from '@/components/states/go';
import { tell } from '@/components/states/told';
import classes from './my.module.css';

/** Asked before her first class of the week. Until she answers it stays; it is never answered for her. */
export function AnythingChanged({ clientId }: { clientId: number }) {
  const { data: form } = useQuery(screeningQueries.form(clientId));
  const nothing = useNothingChanged(clientId);
  if (form?.asksWhetherChanged !== true) return null;
  return (
    <section className={classes.ask} aria-labelledby="changed">
      <Stack gap="xs">
        <Title order={2} id="changed">
          Has anything changed?
        </Title>
        <Text>
          Since you last answered the health questions: anything new with you or your pregnancy, any
          warning sign, anything your midwife or doctor said?
        </Text>
        <Refused error={nothing.error} />
        <Group gap="sm">
          <Button
            variant="default"
            loading={nothing.isPending}
            onClick={() =>
              void nothing
                .mutateAsync()
                .then(() => tell('Thank you. We ask again next week.'))
                .catch(() => undefined)
            }
          >
            Nothing has changed
          </Button>
          <GoButton to="/my/questions" variant="default">
            Something has
          </GoButton>
        </Group>
      </Stack>
    </section>
  );
}
