import {
  Button,
  Checkbox,
  FileButton,
  Group,
  Modal,
  Radio,
  Select,
  Stack,
  Text,
  TextInput,
  Title,
} from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { Problem } from '@/api/problem';
import {
  seriesQueries,
  useAddClosure,
  useCallOff,
  useImportHolidays,
  useRemoveClosure,
} from '@/api/series';
import type { Closure, ClosureRequest, HolidayReport, Location } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { Asked, Empty, Lines, Refused } from '@/components/states/asked';
import { fullDate } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { Consequences } from './consequences';
import classes from './series.module.css';

const span = ({ from, to }: { from: string; to: string }) =>
  from === to ? fullDate(from) : `${fullDate(from)} to ${fullDate(to)}`;

const standing = (count: number) =>
  count === 1 ? '1 session stands on it' : `${count} sessions stand on it`;

export function ClosuresPage() {
  const closures = useQuery(seriesQueries.closures());
  const locations = useQuery(catalogueQueries.locations());
  const remove = useRemoveClosure();
  const [doing, setDoing] = useState<'add' | 'import' | Closure | null>(null);
  const close = () => setDoing(null);
  return (
    <>
      <Group justify="space-between" align="flex-end" mb="xs">
        <Title>Closures and holidays</Title>
        <Group gap="xs">
          <Button variant="default" onClick={() => setDoing('import')}>
            Import holidays
          </Button>
          <Button onClick={() => setDoing('add')}>Add a closure</Button>
        </Group>
      </Group>
      <Text c="dimmed" mb="lg" maw="46rem">
        Days on which a location is shut. Series leave them out; a session that stands there already
        is called off only when you say so.
      </Text>
      <Refused error={remove.error} />
      <Asked query={closures} waiting={<Lines count={4} height={56} />}>
        {(list) =>
          list.length === 0 ? (
            <Empty title="No closures">Every location is open on every day.</Empty>
          ) : (
            <ul className={classes.list}>
              {list.map((closure) => (
                <li key={closure.id} className={classes.closure}>
                  <Text fw={600}>{span(closure)}</Text>
                  <div>
                    <Text>
                      {closure.name}, {closure.locationName}
                    </Text>
                    <Text size="sm" c="dimmed">
                      {closure.kind === 'publicHoliday' ? 'Public holiday' : 'Closure'}
                    </Text>
                    {closure.sessionsStanding > 0 && (
                      <Needs tone="mind">{standing(closure.sessionsStanding)}</Needs>
                    )}
                  </div>
                  <Group gap="xs">
                    {closure.sessionsStanding > 0 && (
                      <Button
                        size="xs"
                        variant="default"
                        aria-label={`Call off what stands on ${closure.name}`}
                        onClick={() => setDoing(closure)}
                      >
                        Call them off
                      </Button>
                    )}
                    <Button
                      size="xs"
                      variant="default"
                      loading={remove.isPending && remove.variables === closure.id}
                      aria-label={`Take away ${closure.name}`}
                      onClick={() =>
                        remove.mutate(closure.id, {
                          onSuccess: ({ laidOut }) =>
                            notifications.show({
                              message: `${closure.name} is taken away; ${laidOut} sessions of series laid out. What was called off stays so.`,
                            }),
                        })
                      }
                    >
                      Take it away
                    </Button>
                  </Group>
                </li>
              ))}
            </ul>
          )
        }
      </Asked>
      <Modal opened={doing === 'add'} onClose={close} title="Add a closure" size="lg">
        <Asked query={locations}>{(places) => <AddForm locations={places} onDone={close} />}</Asked>
      </Modal>
      <Modal opened={doing === 'import'} onClose={close} title="Import holidays" size="xl">
        <Asked query={locations}>
          {(places) => <ImportForm locations={places} onDone={close} />}
        </Asked>
      </Modal>
      <Modal
        opened={doing !== null && typeof doing === 'object'}
        onClose={close}
        title="Call off what stands there"
        size="lg"
      >
        {doing !== null && typeof doing === 'object' && (
          <CallOffForm closure={doing} onDone={close} />
        )}
      </Modal>
    </>
  );
}

const placesOf = (locations: readonly Location[]) =>
  locations.map(({ id, name }) => ({ value: String(id), label: name }));

interface FormProps {
  locations: readonly Location[];
  onDone: () => void;
}

function AddForm({ locations, onDone }: FormProps) {
  const [location, setLocation] = useState<string | null>(String(locations[0]?.id ?? ''));
  const [from, setFrom] = useState<string | null>(null);
  const [to, setTo] = useState<string | null>(null);
  const [kind, setKind] = useState<ClosureRequest['kind']>('closure');
  const [name, setName] = useState('');
  const [callOff, setCallOff] = useState(false);
  const look = useAddClosure();
  const add = useAddClosure();
  const touched =
    <T,>(set: (value: T) => void) =>
    (value: T) => {
      look.reset();
      add.reset();
      set(value);
    };
  const body =
    location === null || from === null || name.trim() === ''
      ? null
      : { locationId: Number(location), from, to: to ?? from, kind, name: name.trim(), callOff };
  const problem = look.error ?? add.error;
  const fields = problem instanceof Problem ? problem.fields : {};
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (body) look.mutate({ dryRun: true, body });
      }}
    >
      <Stack>
        <Select
          label="Location"
          data={placesOf(locations)}
          value={location}
          allowDeselect={false}
          error={fields.locationId}
          onChange={touched(setLocation)}
        />
        <Group grow align="flex-start">
          <DayInput
            label="First day"
            value={from}
            error={fields.from}
            onChange={touched(setFrom)}
          />
          <DayInput
            label="Last day"
            description="Left empty: that one day."
            inputWrapperOrder={['label', 'input', 'description', 'error']}
            value={to}
            error={fields.to}
            onChange={touched(setTo)}
          />
        </Group>
        <TextInput
          label="Name"
          value={name}
          error={fields.name}
          onChange={(event) => touched(setName)(event.currentTarget.value)}
        />
        <Radio.Group
          label="Kind"
          value={kind}
          onChange={touched((value: string) => setKind(value as ClosureRequest['kind']))}
        >
          <Group mt={4}>
            <Radio value="closure" label="Closure" />
            <Radio value="publicHoliday" label="Public holiday" />
          </Group>
        </Radio.Group>
        <Refused error={problem} />
        {look.data &&
          (look.data.sessions.length === 0 ? (
            <Text role="status">No session stands on these days.</Text>
          ) : (
            <Stack gap="sm">
              <Text fw={600} role="status">
                {look.data.sessions.length === 1
                  ? '1 session stands on these days.'
                  : `${look.data.sessions.length} sessions stand on these days.`}
              </Text>
              <Checkbox
                label="Call them off"
                description="Otherwise they stay, and you call them off later or by hand."
                checked={callOff}
                onChange={(event) => setCallOff(event.currentTarget.checked)}
              />
              {callOff && <Consequences changes={look.data.changes} />}
            </Stack>
          ))}
        <Group>
          {look.data === undefined ? (
            <Button type="submit" loading={look.isPending} disabled={body === null}>
              See what falls on it
            </Button>
          ) : (
            <Button
              loading={add.isPending}
              onClick={() => {
                if (body)
                  add.mutate(
                    { dryRun: false, body },
                    {
                      onSuccess: () => {
                        notifications.show({ message: `${body.name} is kept.` });
                        onDone();
                      },
                    },
                  );
              }}
            >
              {callOff ? 'Keep it and call them off' : 'Keep it'}
            </Button>
          )}
          <Button variant="default" onClick={onDone}>
            Leave it
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

function CallOffForm({ closure, onDone }: { closure: Closure; onDone: () => void }) {
  const look = useCallOff(closure.id);
  const done = useCallOff(closure.id);
  const seen = useQuery({
    queryKey: [...seriesQueries.all(), 'call-off', closure.id] as const,
    queryFn: () => look.mutateAsync({ dryRun: true }),
  });
  return (
    <Stack>
      <Text>
        {closure.name}, {span(closure)}, {closure.locationName}
      </Text>
      <Asked query={seen} waiting={<Lines count={3} />}>
        {({ changes }) => <Consequences changes={changes} />}
      </Asked>
      <Refused error={done.error} />
      <Group>
        <Button
          loading={done.isPending}
          disabled={seen.data === undefined}
          onClick={() => done.mutate({ dryRun: false }, { onSuccess: onDone })}
        >
          Call them off
        </Button>
        <Button variant="default" onClick={onDone}>
          Leave it
        </Button>
      </Group>
    </Stack>
  );
}

function ImportForm({ locations, onDone }: FormProps) {
  const [file, setFile] = useState<File | null>(null);
  const [location, setLocation] = useState<string | null>(null);
  const [report, setReport] = useState<HolidayReport | null>(null);
  const send = useImportHolidays();
  const run = (dryRun: boolean) => {
    if (file === null) return;
    send.mutate(
      { dryRun, file, locationId: location === null ? null : Number(location) },
      {
        onSuccess: (answer) => {
          setReport(answer);
          if (!dryRun && answer.refused.length === 0) {
            notifications.show({ message: `${answer.added} days added.` });
            onDone();
          }
        },
      },
    );
  };
  return (
    <Stack>
      <Text>
        A calendar file (.ics), or CSV with the columns from, to, location, kind (holiday or
        closure) and name; dates as 2027-03-04. It is tried first without keeping anything.
      </Text>
      <Select
        label="Location"
        description="For a calendar file, and for rows that name none."
        data={placesOf(locations)}
        value={location}
        clearable
        clearButtonProps={{ 'aria-label': 'No location' }}
        onChange={(value) => {
          setLocation(value);
          setReport(null);
        }}
      />
      <Group>
        <FileButton
          accept=".ics,.csv,text/calendar,text/csv"
          onChange={(picked) => {
            setFile(picked);
            setReport(null);
            send.reset();
          }}
        >
          {(props) => (
            <Button {...props} variant="default">
              {file === null ? 'Choose a file' : 'Choose another file'}
            </Button>
          )}
        </FileButton>
        {file !== null && <Text>{file.name}</Text>}
      </Group>
      <Refused error={send.error} />
      {report !== null && <Report report={report} />}
      <Group>
        <Button
          variant={report === null ? 'filled' : 'default'}
          loading={send.isPending && send.variables.dryRun}
          disabled={file === null}
          onClick={() => run(true)}
        >
          Try it without keeping
        </Button>
        <Button
          loading={send.isPending && !send.variables.dryRun}
          disabled={report === null || report.refused.length > 0 || report.added === 0}
          onClick={() => run(false)}
        >
          Add {report !== null && report.refused.length === 0 ? report.added : ''} days
        </Button>
      </Group>
    </Stack>
  );
}

function Report({ report: { added, days, refused } }: { report: HolidayReport }) {
  return (
    <div role="status">
      {refused.length > 0 && (
        <>
          <Needs tone="stop">
            {refused.length === 1
              ? '1 line cannot be taken'
              : `${refused.length} lines cannot be taken`}
          </Needs>
          <ul className={classes.consequences}>
            {refused.map(({ line, column, reason }) => (
              <li key={`${line} ${column} ${reason}`}>
                Line {line}
                {column !== '' && `, ${column}`}: {reason}
              </li>
            ))}
          </ul>
        </>
      )}
      {days.length > 0 && (
        <>
          <Text fw={600}>
            {added} to add, {days.length - added} there already
          </Text>
          <div className={classes.dates} role="region" tabIndex={0} aria-label="Days in the file">
            <ul>
              {days.map((day) => (
                <li key={`${day.line} ${day.locationId} ${day.from}`}>
                  <span>{span(day)}</span>
                  <span>
                    {day.name}, {day.locationName}
                  </span>
                  <span>
                    {day.thereAlready
                      ? 'There already'
                      : day.sessionsStanding > 0 && (
                          <Needs tone="mind">{standing(day.sessionsStanding)}</Needs>
                        )}
                  </span>
                </li>
              ))}
            </ul>
          </div>
        </>
      )}
    </div>
  );
}
