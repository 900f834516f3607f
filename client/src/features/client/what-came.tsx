import { Anchor, Stack, Text, Title } from '@mantine/core';
import { useEffect, useRef } from 'react';
import type { ScreeningAnswer } from '@/api/types';
import { SourceLine } from '@/components/rules/source-line';
import { GoButton } from '@/components/states/go';
import classes from './my.module.css';

/** What her answers come to, why, and what to do now. */
export function WhatCame({ came }: { came: ScreeningAnswer }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    window.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  const reasons = came.reasons ?? [];
  return (
    <Stack gap="lg">
      <Title ref={heading} tabIndex={-1} className={classes.quietFocus}>
        Your answers are with us
      </Title>
      <Text size="lg">{came.says}</Text>
      {came.onHold && (
        <div className={classes.call}>
          <Text size="lg">
            If it is bad or sudden, call{' '}
            <Anchor href={`tel:${came.emergencyNumber}`} fw={700}>
              {came.emergencyNumber}
            </Anchor>{' '}
            now.
          </Text>
        </div>
      )}
      {reasons.length > 0 && (
        <section aria-labelledby="why">
          <Title order={2} id="why" mb="xs">
            Why
          </Title>
          <ul className={classes.list}>
            {reasons.map(({ question, asks, text, source }) => (
              <li key={question} className={classes.reason}>
                <Text size="sm" c="dimmed">
                  {asks}
                </Text>
                <Text>{text}</Text>
                <SourceLine source={source} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <div>
        {came.outcome === 'nothingFound' ? (
          <GoButton to="/my">To my classes</GoButton>
        ) : (
          <GoButton to="/my/letters">My letters</GoButton>
        )}
      </div>
    </Stack>
  );
}
