import { Button, Modal, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import type { ClientCard } from '@/api/types';
import { BirthForm } from '@/components/forms/birth-form';
import { GoButton } from '@/components/states/go';
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
          <div key={code}>
            <Text size="lg">
              {says}
              {by != null && ` By ${longDay(by)}.`}
            </Text>
            <WhereTo code={code} />
          </div>
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

/** The page on which she does what is asked. */
function WhereTo({ code }: { code: string }) {
  switch (code) {
    case 'screening':
      return (
        <GoButton to="/my/questions" mt={4}>
          Answer the questions
        </GoButton>
      );
    case 'letter':
    case 'hold':
      return (
        <GoButton to="/my/letters" mt={4} variant="default">
          My letters
        </GoButton>
      );
    case 'dates':
      return (
        <GoButton to="/my/details" mt={4} variant="default">
          Tell us your dates
        </GoButton>
      );
    default:
      return null;
  }
}
