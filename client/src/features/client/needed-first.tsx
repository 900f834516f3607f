import { Button, Modal, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import type { ClientCard } from '@/api/types';
import { BirthForm } from '@/components/forms/birth-form';
import { longDay } from '@/components/time/days';
import classes from './my.module.css';

interface Props {
  her: ClientCard;
  today: string;
}

/** What the studio needs of her: before anything else, plainly. */
export function NeededFirst({ her, today }: Props) {
  const [telling, setTelling] = useState(false);
  const asksOfBirth = her.pregnancy?.mayHaveGivenBirth === true || her.pregnancy?.pastDue === true;
  if (her.needs.length === 0 && !asksOfBirth) return null;
  return (
    <section className={classes.ask} aria-label="What we need from you">
      <Stack gap="xs">
        {her.needs.map(({ code, says, by }) => (
          <Text key={code} size="lg">
            {says}
            {by != null && ` By ${longDay(by)}.`}
          </Text>
        ))}
        {asksOfBirth && (
          <div>
            <Button mt={4} onClick={() => setTelling(true)}>
              I have given birth
            </Button>
          </div>
        )}
      </Stack>
      <Modal opened={telling} onClose={() => setTelling(false)} title="The birth">
        <BirthForm clientId={her.id} today={today} onDone={() => setTelling(false)} />
      </Modal>
    </section>
  );
}
