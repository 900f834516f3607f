import { Button, Collapse, Group, Stack, Text } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useState } from 'react';
import type { ClientCard, Released } from '@/api/types';
import { LossForm } from '@/components/card/loss-form';
import { BirthForm } from '@/components/forms/birth-form';
import { GoButton } from '@/components/states/go';
import classes from './my.module.css';

interface Props {
  her: ClientCard;
  today: string;
  onBirth: (released: Released) => void;
}

/** At the foot of the page, folded: there when she looks for it, and never in her way. */
export function SomethingChanged({ her, today, onBirth }: Props) {
  const [opened, { toggle }] = useDisclosure(false);
  const [telling, setTelling] = useState<'birth' | 'loss' | null>(null);
  const { pregnancy, phase } = her;
  return (
    <section aria-label="If something has changed">
      <Button
        variant="transparent"
        px={0}
        color="gray"
        className={classes.quietLink}
        aria-expanded={opened}
        aria-controls="something-changed"
        onClick={toggle}
      >
        Tell us that something has changed
      </Button>
      <Collapse expanded={opened} id="something-changed">
        {opened && (
          <Stack gap="md" py="xs">
            <Group gap="xs">
              <GoButton to="/my/questions" variant="default">
                Something about my health
              </GoButton>
              <GoButton to="/my/details" variant="default">
                My dates
              </GoButton>
              {pregnancy?.birthReportable === true && (
                <Button variant="default" onClick={() => setTelling('birth')}>
                  I have given birth
                </Button>
              )}
              {phase === 'pregnant' && (
                <Button variant="default" onClick={() => setTelling('loss')}>
                  My pregnancy has ended
                </Button>
              )}
              {phase === 'born' && (
                <Button variant="default" onClick={() => setTelling('loss')}>
                  We have lost our baby
                </Button>
              )}
            </Group>
            {telling === 'birth' && <BirthForm clientId={her.id} today={today} onDone={onBirth} />}
            {telling === 'loss' && (
              <LossForm clientId={her.id} onDone={() => setTelling(null)} herself />
            )}
          </Stack>
        )}
      </Collapse>
    </section>
  );
}

/** What she reads once she has told of the birth: the same plain words for everybody, and who will ring her. */
export const AfterTelling = ({ released }: { released: Released }) => (
  <section className={classes.ask} aria-label="What happens now" role="status">
    <Stack gap="xs">
      <Text size="lg">
        Thank you for telling us.{' '}
        {released.bookingsReleased > 0 &&
          `What you had booked is released (${released.bookingsReleased}), and nothing is owed for it. `}
        {released.preterm
          ? 'Somebody from the studio will ring you in the next days. You need not do anything, and nothing is asked of you.'
          : 'There is nothing you need to do now, and we will not ask you for anything in the first weeks.'}
      </Text>
      <Group>
        <GoButton to="/my/details" variant="default">
          Put the day or how right
        </GoButton>
      </Group>
    </Stack>
  </section>
);
