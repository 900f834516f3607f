import { Button, Collapse, Stack, Text } from '@mantine/core';
import { IconChevronDown, IconChevronRight } from '@tabler/icons-react';
import { useId, useState } from 'react';
import type { Choice } from '@/api/types';
import { shortDay } from '@/components/time/days';
import { VerdictMark } from '@/components/verdict/mark';
import { refused } from './choices';
import { Reasons } from './reasons';
import classes from './booking.module.css';

interface Props {
  choices: readonly Choice[];
  /** `12 sessions do not suit her` */
  title: (count: number) => string;
}

/** What she may not have, folded under a line, with what would change it. */
export function RefusedList({ choices, title }: Props) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const groups = refused(choices);
  const count = groups.reduce((sum, { sessions }) => sum + sessions.length, 0);
  if (count === 0) return null;
  return (
    <div className={classes.refused}>
      <Button
        variant="subtle"
        color="gray"
        px="xs"
        ml={-10}
        h="auto"
        mih={36}
        leftSection={
          open ? (
            <IconChevronDown size={18} aria-hidden />
          ) : (
            <IconChevronRight size={18} aria-hidden />
          )
        }
        aria-expanded={open}
        aria-controls={id}
        classNames={{ label: classes.wrap }}
        onClick={() => setOpen(!open)}
      >
        {title(count)}
      </Button>
      <Collapse expanded={open} id={id}>
        <Stack gap={0}>
          {groups.map((group) => (
            <article key={group.key} className={classes.refusal}>
              <Text fw={600}>{group.className}</Text>
              {group.message === null ? (
                <VerdictMark verdict={group.verdict} />
              ) : (
                <Text size="sm">{group.message}</Text>
              )}
              <Reasons reasons={group.reasons} />
              <Text size="sm" c="dimmed">
                {group.sessions
                  .map(({ on, startsLocal }) => `${shortDay(on)} ${startsLocal}`)
                  .join(' · ')}
              </Text>
            </article>
          ))}
        </Stack>
      </Collapse>
    </div>
  );
}
