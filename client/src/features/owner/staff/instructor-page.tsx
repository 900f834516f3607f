import {
  Alert,
  Button,
  FileButton,
  Group,
  Modal,
  NumberInput,
  Stack,
  Tabs,
  Text,
  TextInput,
  Title,
} from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { Problem } from '@/api/problem';
import { useMe } from '@/api/session';
import {
  proofPath,
  staffQueries,
  useChangeInstructor,
  useSendProof,
  useWithdrawQualification,
} from '@/api/staff';
import type { InstructorPage as Page } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { SubmitRow } from '@/components/forms/submit-row';
import { AvailabilityWeek } from '@/components/staff/availability-week';
import { HerSessions } from '@/components/staff/her-sessions';
import { HoursView } from '@/components/staff/hours-view';
import { Leave } from '@/components/staff/leave';
import { PayView } from '@/components/staff/pay-view';
import staff from '@/components/staff/staff.module.css';
import { Wishes } from '@/components/staff/wishes';
import { Asked, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { fullDate } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { QualificationForm } from '@/features/owner/qualification-form';

export function InstructorPage() {
  const instructorId = Number(useParams({ strict: false }).instructorId);
  const page = useQuery(staffQueries.one(instructorId));
  return (
    <Asked query={page}>
      {(her) => (
        <>
          <Go to="/studio/staff">Staff</Go>
          <Title mb="md">{her.name}</Title>
          <Tabs defaultValue="qualifications" keepMounted={false}>
            <Tabs.List mb="md">
              <Tabs.Tab value="qualifications">Qualifications</Tabs.Tab>
              <Tabs.Tab value="details">Details</Tabs.Tab>
              <Tabs.Tab value="availability">Availability</Tabs.Tab>
              <Tabs.Tab value="leave">Days away</Tabs.Tab>
              <Tabs.Tab value="wishes">Wishes</Tabs.Tab>
              <Tabs.Tab value="hours">Hours</Tabs.Tab>
              <Tabs.Tab value="pay">Pay</Tabs.Tab>
            </Tabs.List>
            <Tabs.Panel value="qualifications">
              <Qualifications her={her} />
            </Tabs.Panel>
            <Tabs.Panel value="details">
              <Details her={her} />
            </Tabs.Panel>
            <Tabs.Panel value="availability">
              <AvailabilityWeek instructorId={her.id} hours={her.availability} />
            </Tabs.Panel>
            <Tabs.Panel value="leave">
              <Leave instructorId={her.id} leave={her.leave} />
            </Tabs.Panel>
            <Tabs.Panel value="wishes">
              <Wishes instructorId={her.id} wishes={her.wishes} />
            </Tabs.Panel>
            <Tabs.Panel value="hours">
              <HoursView instructorId={her.id} />
            </Tabs.Panel>
            <Tabs.Panel value="pay">
              <PayView instructorId={her.id} />
            </Tabs.Panel>
          </Tabs>
        </>
      )}
    </Asked>
  );
}

function Qualifications({ her }: { her: Page }) {
  const { today } = useMe();
  const [adding, setAdding] = useState(false);
  const send = useSendProof(her.id);
  const withdraw = useWithdrawQualification(her.id);
  return (
    <>
      <ul className={staff.rows}>
        {her.qualifications.map(
          ({ id, kind, issuedOn, expiresOn, status, hasProof, sessionsAfter }) => (
            <li key={id}>
              <span style={{ flex: '1 1 18rem' }}>
                <Text fw={600} component="span">
                  {kind}
                </Text>
                , {fullDate(issuedOn)} to {fullDate(expiresOn)}
              </span>
              {status === 'withdrawn' && <Text c="dimmed">Withdrawn: counts nowhere</Text>}
              {status === 'expired' && <Needs tone="stop">ended</Needs>}
              {status === 'endsSoon' && <Needs tone="mind">ends soon</Needs>}
              {hasProof ? (
                <a href={proofPath(her.id, id)} target="_blank" rel="noreferrer">
                  Proof of {kind}
                </a>
              ) : (
                <Text c="dimmed">No proof filed</Text>
              )}
              {status !== 'withdrawn' && (
                <Group gap="xs">
                  <FileButton
                    accept="application/pdf,image/jpeg,image/png"
                    onChange={(file) => file && send.mutate({ qualificationId: id, file })}
                  >
                    {(props) => (
                      <Button
                        {...props}
                        size="sm"
                        variant="default"
                        aria-label={`${hasProof ? 'Replace' : 'File'} the proof of ${kind}`}
                      >
                        {hasProof ? 'Replace proof' : 'File proof'}
                      </Button>
                    )}
                  </FileButton>
                  <Button
                    size="sm"
                    variant="default"
                    onClick={() => withdraw.mutate(id)}
                    aria-label={`Withdraw ${kind}, filed wrongly`}
                  >
                    Filed wrongly
                  </Button>
                </Group>
              )}
              {sessionsAfter.length > 0 && (
                <div style={{ flexBasis: '100%' }}>
                  <Text size="sm">Sessions after its last day that need it:</Text>
                  <HerSessions sessions={sessionsAfter} />
                </div>
              )}
            </li>
          ),
        )}
      </ul>
      {her.qualifications.length === 0 && <Needs tone="stop">No qualification noted</Needs>}
      <Refused error={send.error ?? withdraw.error} />
      <Button mt="md" onClick={() => setAdding(true)}>
        Add qualification
      </Button>
      <Modal
        opened={adding}
        onClose={() => setAdding(false)}
        title={`Qualification of ${her.name}`}
      >
        <QualificationForm
          instructorId={her.id}
          today={today}
          kinds={[...new Set(her.qualifications.map(({ kind }) => kind))]}
          onDone={() => setAdding(false)}
        />
      </Modal>
    </>
  );
}

function Details({ her }: { her: Page }) {
  const change = useChangeInstructor(her.id);
  const form = useForm({
    initialValues: {
      name: her.name,
      called: her.called,
      email: her.email,
      phone: her.phone,
      weeklyHours: her.weeklyMinutesMost == null ? '' : her.weeklyMinutesMost / 60,
      restHours: her.restMinutesLeast == null ? '' : her.restMinutesLeast / 60,
      leftOn: her.leftOn ?? null,
    },
  });
  const { leftOn } = form.values;
  const stillTeaches = change.error instanceof Problem && change.error.code === 'still-teaches';
  const behind = useQuery({
    ...staffQueries.sessions(her.id, { from: leftOn ?? undefined }),
    enabled: leftOn !== null && leftOn !== (her.leftOn ?? null),
  }).data;
  const minutes = (hours: number | string) =>
    hours === '' ? null : Math.round(Number(hours) * 60);
  const save = (confirmed: boolean) =>
    form.onSubmit(({ weeklyHours, restHours, ...rest }) =>
      change.mutate(
        {
          ...rest,
          weeklyMinutesMost: minutes(weeklyHours),
          restMinutesLeast: minutes(restHours),
          confirmed,
        },
        { onError: showRefusal(form) },
      ),
    );
  return (
    <form onSubmit={save(false)}>
      <Stack maw="28rem">
        <TextInput label="Name" required {...form.getInputProps('name')} />
        <TextInput label="Likes to be called" {...form.getInputProps('called')} />
        <TextInput label="E-mail" required {...form.getInputProps('email')} />
        <TextInput label="Phone" {...form.getInputProps('phone')} />
        <NumberInput
          label="Most hours in a week"
          description="Empty: no bound"
          min={0}
          max={168}
          {...form.getInputProps('weeklyHours')}
        />
        <NumberInput
          label="Least hours of rest between two days"
          description="Empty: the studio's policy"
          min={0}
          max={24}
          {...form.getInputProps('restHours')}
        />
        <DayInput
          label="First day on which she no longer works here"
          {...form.getInputProps('leftOn')}
        />
        {behind !== undefined && behind.length > 0 && (
          <Alert color="amber">
            <Text size="md">She is still to teach these, and each needs somebody else:</Text>
            <HerSessions sessions={behind} />
          </Alert>
        )}
        <Refused error={change.error}>
          {stillTeaches ? (
            <Button size="sm" onClick={() => save(true)()}>
              I have looked at them: save
            </Button>
          ) : undefined}
        </Refused>
        {change.isSuccess && <Text role="status">Kept.</Text>}
      </Stack>
      <SubmitRow label="Save the details" busy={change.isPending} />
    </form>
  );
}
