import { Button, Modal, Text, Title, Stack, Autocomplete } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMe } from '@/api/session';
import { staffQueries, useAddQualification } from '@/api/staff';
import type { Instructor } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { Asked, Empty, Lines, Refused } from '@/components/states/asked';
import { addDays, daysBetween, fullDate } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
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
                {list.map((instructor) => (
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
    </>
  );
}

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
  const [adding, setAdding] = useState(false);
  return (
    <li className={classes.staff}>
      <div>
        <Text fw={600}>{instructor.name}</Text>
        <Text size="sm" c="dimmed">
          {instructor.email}
        </Text>
        <Text size="sm" c="dimmed">
          {instructor.sessionsAhead} sessions ahead
        </Text>
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
      <Button
        variant="default"
        size="sm"
        onClick={() => setAdding(true)}
        aria-label={`Add a qualification for ${instructor.name}`}
      >
        Add qualification
      </Button>
      <Modal
        opened={adding}
        onClose={() => setAdding(false)}
        title={`Qualification of ${instructor.name}`}
        size="md"
      >
        <QualificationForm
          instructorId={instructor.id}
          today={today}
          kinds={kinds}
          onDone={() => setAdding(false)}
        />
      </Modal>
    </li>
  );
}

interface FormProps {
  instructorId: number;
  today: string;
  kinds: string[];
  onDone: () => void;
}

function QualificationForm({ instructorId, today, kinds, onDone }: FormProps) {
  const form = useForm<{ kind: string; issuedOn: string | null; expiresOn: string | null }>({
    initialValues: { kind: '', issuedOn: today, expiresOn: null },
    validate: {
      kind: (kind) => (kind.trim() === '' ? 'Which qualification?' : null),
      expiresOn: (day) => (day === null ? 'Until when is it valid?' : null),
    },
  });
  const add = useAddQualification(instructorId);
  return (
    <form
      onSubmit={form.onSubmit(({ kind, issuedOn, expiresOn }) => {
        if (issuedOn === null || expiresOn === null) return;
        add.mutate(
          { kind, issuedOn, expiresOn },
          { onSuccess: onDone, onError: showRefusal(form) },
        );
      })}
    >
      <Stack>
        <Refused error={add.error} />
        <Autocomplete label="Qualification" data={kinds} {...form.getInputProps('kind')} />
        <DayInput label="Issued on" {...form.getInputProps('issuedOn')} />
        <DayInput label="Valid until" {...form.getInputProps('expiresOn')} />
      </Stack>
      <SubmitRow label="Add it" busy={add.isPending} onCancel={onDone} />
    </form>
  );
}
