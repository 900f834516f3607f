import { Button, Group, Text } from '@mantine/core';
import { useSaveSessionPlan } from '@/api/plans';
import { useMe } from '@/api/session';
import type { ClassPlan, SessionPlan } from '@/api/types';
import { Go } from '@/components/states/go';
import { tell, tellRefused } from '@/components/states/told';
import { longDay, nearDay } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { useHere } from './here';
import { baseOf, type DraftDoing } from './use-draft';
import classes from './plans.module.css';

interface Props {
  ofClass: ClassPlan;
  ofSession?: SessionPlan;
  doing: DraftDoing;
}

/** Whose plan this is: the class's, or one session's own. */
export function SessionHead({ ofClass, ofSession, doing }: Props) {
  const { today } = useMe();
  const { plan } = useHere();
  const save = useSaveSessionPlan();
  if (ofSession === undefined)
    return (
      <Text c="dimmed" mb="md">
        {ofClass.minutes} minutes.{' '}
        {ofClass.version === 0 ? 'No plan yet.' : `The class plan, version ${ofClass.version}.`}
      </Text>
    );
  const near = nearDay(ofSession.on, today);
  const follow = () =>
    save.mutateAsync({ sessionId: ofSession.sessionId, plan: null }).then((own) => {
      doing.change({ do: 'rebase', base: baseOf({ ofClass, ofSession: own }) });
      tell('This session follows its class again.');
    }, tellRefused);
  return (
    <div className={classes.head}>
      <Text>
        {near === 'today' ? 'Today' : longDay(ofSession.on)}
        {near === 'tomorrow' && ' (tomorrow)'}, {ofSession.startsLocal}, {ofSession.minutes}{' '}
        minutes.
      </Text>
      {ofSession.mayChange || <Needs tone="mind">{ofSession.whyNot}</Needs>}
      {ofSession.followsClass ? (
        <Text c="dimmed">
          It is taught as its class
          {ofClass.version === 0 ? ', which has no plan yet.' : `: version ${ofClass.version}.`}
        </Text>
      ) : (
        <Group gap="sm">
          <Needs tone="mind">This session has a plan of its own</Needs>
          {ofSession.mayChange && (
            <Button
              variant="default"
              size="xs"
              loading={save.isPending}
              onClick={() => void follow()}
            >
              Follow the class again
            </Button>
          )}
          <Go to={plan} params={{ classId: String(ofClass.classId) }} search={{}}>
            Look at the class’s plan
          </Go>
        </Group>
      )}
    </div>
  );
}
