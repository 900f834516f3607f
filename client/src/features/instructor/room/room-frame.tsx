import { Button, Progress, Title } from '@mantine/core';
import { useFullscreenDocument } from '@mantine/hooks';
import { IconChevronLeft, IconChevronRight } from '@tabler/icons-react';
import type { Roster } from '@/api/types';
import { CautionWords } from '@/components/states/safety-note';
import { SessionTime } from '@/components/time/session-time';
import type { Dialog } from './room-dialogs';
import { minutesBefore, stepFrom, type Stop } from './steps';
import classes from './room.module.css';

interface HeadProps {
  roster: Roster;
  at: Stop;
  onOpen: (dialog: Dialog) => void;
  onNotes: () => void;
  onLeave: () => void;
}

/** Which class, how far through it, and the ways to everything else. */
export function RoomHead({ roster, at, onOpen, onNotes, onLeave }: HeadProps) {
  const { session, plan, people } = roster;
  const { fullscreen, toggle } = useFullscreenDocument();
  const all = minutesBefore(plan, 'notes');
  const done = minutesBefore(plan, at);
  const here = people.filter(({ checkedInAt }) => checkedInAt != null).length;
  const place = plan.findIndex(({ position }) => position === at) + 1;
  const leave = () => {
    if (fullscreen) void toggle();
    onLeave();
  };
  return (
    <header className={classes.head}>
      <div className={classes.title}>
        <Title order={1} className={classes.class}>
          {session.className}
        </Title>
        <span>
          <SessionTime session={session} /> · {here} of {people.length} here
        </span>
      </div>
      <div className={classes.acts}>
        {plan.length > 0 && (
          <Button variant="default" onClick={() => onOpen({ kind: 'jump' })}>
            All movements
          </Button>
        )}
        {plan.length > 0 && people.length > 0 && (
          <Button variant="default" onClick={() => onOpen({ kind: 'table' })}>
            Whole class
          </Button>
        )}
        {at !== 'notes' && (
          <Button variant="default" onClick={onNotes}>
            Notes
          </Button>
        )}
        {document.fullscreenEnabled && (
          <Button variant="default" onClick={() => void toggle()}>
            {fullscreen ? 'End full screen' : 'Full screen'}
          </Button>
        )}
        <Button variant="default" onClick={leave}>
          Leave
        </Button>
      </div>
      {plan.length > 0 && (
        <div className={classes.progress}>
          <Progress.Root size="lg" transitionDuration={0}>
            <Progress.Section
              value={all === 0 ? 0 : (100 * done) / all}
              aria-label="Through the plan"
            />
          </Progress.Root>
          <span>
            {at === 'notes'
              ? `All ${plan.length} movements, ${all} minutes`
              : `Movement ${place} of ${plan.length} · minute ${done} of ${all} by the plan`}
          </span>
        </div>
      )}
    </header>
  );
}

interface FootProps {
  roster: Roster;
  stops: readonly Stop[];
  at: Stop;
  onStep: (step: 1 | -1) => void;
}

/** One large key back and one forward, and what always holds. */
export function RoomFoot({ roster, stops, at, onStep }: FootProps) {
  const { emergencyNumber } = roster;
  return (
    <footer className={classes.foot}>
      <div className={classes.keys}>
        <Button
          className={classes.key}
          variant="default"
          leftSection={<IconChevronLeft size={36} aria-hidden />}
          disabled={at === stops[0]}
          onClick={() => onStep(-1)}
        >
          Back
        </Button>
        <Button
          className={classes.key}
          rightSection={<IconChevronRight size={36} aria-hidden />}
          disabled={at === 'notes'}
          onClick={() => onStep(1)}
        >
          {at !== 'notes' && stepFrom(stops, at, 1) === 'notes' ? 'Notes after class' : 'Next'}
        </Button>
      </div>
      <div className={classes.safety}>
        With a warning sign she stops: press her name.
        <CautionWords number={emergencyNumber} compact />
      </div>
    </footer>
  );
}
