import { Anchor, Box, Group, Text } from '@mantine/core';
import { Link, Outlet, useRouterState } from '@tanstack/react-router';
import { useLive } from '@/api/live';
import { useKeptNotes } from '@/api/notes';
import { useMe } from '@/api/session';
import { ConnectionLine } from '@/components/states/connection-line';
import { AccountMenu } from './account-menu';
import { DeskLinks, LetterCount } from './desk-links';
import { deskAt, desksOf, type Desk } from './desks';
import { Finder } from './finder';
import classes from './shell.module.css';

export function Shell() {
  const me = useMe();
  const path = useRouterState({ select: (state) => state.location.pathname });
  const desk = deskAt(path);
  useLive();
  useKeptNotes(me.accountId);
  return (
    <>
      <a href="#main" className={classes.skip}>
        Skip to the page
      </a>
      <header className={classes.header}>
        <div className={classes.top}>
          <Text component="span" className={classes.name}>
            {me.studioName}
          </Text>
          <DeskSwitch desks={desksOf(me)} here={desk} />
          {desk?.card !== undefined && <Finder card={desk.card} />}
          <AccountMenu me={me} />
        </div>
        {desk && <DeskLinks desk={desk} />}
        <div className={classes.ticks} aria-hidden="true" />
      </header>
      <ConnectionLine />
      <Box component="main" id="main" tabIndex={-1} className={classes.main}>
        <Outlet />
      </Box>
    </>
  );
}

function DeskSwitch({ desks, here }: { desks: Desk[]; here?: Desk }) {
  if (desks.length < 2) return null;
  return (
    <Group component="nav" gap="xs" aria-label="Desks" className={classes.desks}>
      {desks.map((desk) => (
        <Anchor
          key={desk.path}
          component={Link}
          to={desk.path}
          underline="never"
          className={classes.desk}
          aria-current={desk === here ? 'true' : undefined}
        >
          {desk.name}
          {desk.counts === 'letters' && desk !== here && <LetterCount />}
        </Anchor>
      ))}
    </Group>
  );
}
