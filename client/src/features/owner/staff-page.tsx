import { Button, Modal, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMe } from '@/api/session';
import { staffQueries } from '@/api/staff';
import type { Instructor } from '@/api/types';
import { AccountForm } from '@/components/forms/account-form';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { addDays, daysBetween, fullDate } from '@/components/time/days';
import { hoursWords } from '@/components/staff/words';
import { Needs } from '@/components/verdict/mark';
import { Accounts } from './accounts';
import { QualificationForm } from './qualification-form';
import classes from './owner.module.css';

const noticeDays = 60;

export function StaffPage() {
  const { today } = useMe();
  const staff = useQuery(staffQueries.instructors());
  return (
    <>
      <Title mb="md">Staff</Title>
      <Asked query={staff} waiting={<Lines count={6} height={72} />}>
        {(list) =>
          list.length === 0 ? (
            <Empty title="No instructors yet" />
          ) : (
            <>
              <RunningOut staff={list} today={today} />
              <ul className={classes.list}>
                {[...list].sort(byNeed).map((instructor) => (
                  <One
                    key={instructor.id}
                    instructor={instructor}
                    today={today}
                    kinds={kindsOf(list)}
                  />
                ))}
              </ul>
            </>
          )
        }
      </Asked>
      <Accounts />
    </>
  );
}

/** What needs attention first; those who need the same stay by name. */
const needOf = ({ sessionsUnqualified, sessionsAbsent, qualifications }: Instructor) =>
  sessionsUnqualified + sessionsAbsent > 0
    ? 0
    : qualifications.length === 0 || qualifications.some(({ status }) => status !== 'valid')
      ? 1
      : 2;
const byNeed = (a: Instructor, b: Instructor) => needOf(a) - needOf(b);

const kindsOf = (staff: readonly Instructor[]) =>
  [
    ...new Set(staff.flatMap(({ qualifications }) => qualifications.map(({ kind }) => kind))),
  ].sort();

/** The latest of each kind: a renewed qualification is not one that runs out. */
const inForce = ({ qualifications }: Instructor) =>
  qualifications.filter(
    ({ kind, expiresOn }) =>
      !qualifications.some((other) => other.kind === kind && other.expiresOn > expiresOn),
  );

function RunningOut({ staff, today }: { staff: readonly Instructor[]; today: string }) {
  const soon = staff
    .flatMap((instructor) => inForce(instructor).map((held) => ({ instructor, held })))
    .filter(({ held }) => held.expiresOn <= addDays(today, noticeDays))
    .sort((a, b) => a.held.expiresOn.localeCompare(b.held.expiresOn));
  return (
    <section aria-labelledby="soon">
      <Title order={2} id="soon">
        Runs out within {noticeDays} days
      </Title>
      {soon.length === 0 ? (
        <Text c="dimmed" mb="xl">
          Nothing.
        </Text>
      ) : (
        <ul className={classes.soon}>
          {soon.map(({ instructor, held }) => {
            const left = daysBetween(today, held.expiresOn);
            return (
              <li key={held.id}>
                <Needs tone={left < 0 ? 'stop' : 'mind'}>
                  {left < 0 ? 'Ended' : left === 0 ? 'Today' : `${left} days`}
                </Needs>
                <span>
                  {instructor.name}: {held.kind}, {fullDate(held.expiresOn)}
                </span>
              </li>
            );
          })}
        </ul>
      )}
    </section>
  );
}

interface OneProps {
  instructor: Instructor;
  today: string;
  kinds: string[];
}

function One({ instructor, today, kinds }: OneProps) {
  const [doing, setDoing] = useState<'qualification' | 'account' | null>(null);
  const close = () => setDoing(null);
  return (
    <li className={classes.staff}>
      <div>
        <Go to="/studio/staff/$instructorId" params={{ instructorId: String(instructor.id) }}>
          {instructor.name}
        </Go>
        <Text size="sm" c="dimmed">
          {instructor.email}
        </Text>
        <Text size="sm" c="dimmed">
          {instructor.sessionsAhead} sessions ahead, {hoursWords(instructor.minutesThisWeek)} this
          week
          {instructor.weeklyMinutesMost != null &&
            ` of at most ${hoursWords(instructor.weeklyMinutesMost)}`}
        </Text>
        {instructor.sessionsUnqualified > 0 && (
          <Needs tone="stop">{instructor.sessionsUnqualified} without qualification</Needs>
        )}
        {instructor.sessionsAbsent > 0 && (
          <Needs tone="stop">{instructor.sessionsAbsent} while away</Needs>
        )}
        {instructor.leftOn != null && (
          <Text size="sm" c="dimmed">
            Works here until {fullDate(addDays(instructor.leftOn, -1))}
          </Text>
        )}
      </div>
      <div className={classes.held}>
        {instructor.qualifications.length === 0 && (
          <Needs tone="stop">No qualification noted</Needs>
        )}
        {inForce(instructor).map(({ id, kind, expiresOn, status }) => (
          <span key={id}>
            {kind}{' '}
            {status === 'valid' ? (
              <Text component="span" c="dimmed">
                until {fullDate(expiresOn)}
              </Text>
            ) : (
              <Needs tone={status === 'expired' ? 'stop' : 'mind'}>
                {status === 'expired' ? 'ended' : 'until'} {fullDate(expiresOn)}
              </Needs>
            )}
          </span>
        ))}
      </div>
      <Stack gap="xs">
        <Button
          variant="default"
          size="sm"
          onClick={() => setDoing('qualification')}
          aria-label={`Add a qualification for ${instructor.name}`}
        >
          Add qualification
        </Button>
        {!instructor.hasAccount && (
          <Button
            variant="default"
            size="sm"
            onClick={() => setDoing('account')}
            aria-label={`Give an account to ${instructor.name}`}
          >
            Give account
          </Button>
        )}
      </Stack>
      <Modal
        opened={doing === 'qualification'}
        onClose={close}
        title={`Qualification of ${instructor.name}`}
        size="md"
      >
        <QualificationForm
          instructorId={instructor.id}
          today={today}
          kinds={kinds}
          onDone={close}
        />
      </Modal>
      <Modal
        opened={doing === 'account'}
        onClose={close}
        title={`Account for ${instructor.name}`}
        size="md"
      >
        <AccountForm
          name={instructor.name}
          email={instructor.email}
          as="instructor"
          instructorId={instructor.id}
          onDone={close}
        />
      </Modal>
    </li>
  );
}
