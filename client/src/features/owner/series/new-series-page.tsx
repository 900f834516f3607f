import { Button, Group, Pill, Select, Stack, Title } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { Problem } from '@/api/problem';
import { useAddSeries } from '@/api/series';
import { useMe } from '@/api/session';
import { staffQueries } from '@/api/staff';
import type { SeriesRequest } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { addDays, fullDate } from '@/components/time/days';
import { PlaceFields, type PlaceDraft } from './place-fields';
import { PreviewDates } from './preview-dates';
import { newRule, ruleOf, unfinished, weekdays, type RuleDraft } from './rule-draft';
import { RuleFields } from './rule-fields';
import classes from './series.module.css';

const codeOf = (day: string) =>
  weekdays[(new Date(`${day}T00:00:00Z`).getUTCDay() + 6) % 7]?.code ?? 'MO';

export function NewSeriesPage() {
  const { today } = useMe();
  const locations = useQuery(catalogueQueries.locations());
  const list = useQuery(catalogueQueries.classes());
  const staff = useQuery(staffQueries.instructors());
  const navigate = useNavigate();
  const add = useAddSeries();
  const tomorrow = addDays(today, 1);
  const [classId, setClassId] = useState<number | null>(null);
  const [start, setStart] = useState<string | null>(tomorrow);
  const [rule, setRule] = useState<RuleDraft>(newRule([codeOf(tomorrow)]));
  const [left, setLeft] = useState<string[]>([]);
  const [place, setPlace] = useState<PlaceDraft>({
    startsLocal: '18:00',
    minutes: 50,
    roomId: null,
    instructorId: null,
    seats: 0,
  });

  const missing = unfinished(rule);
  const request: SeriesRequest | null =
    missing !== null || start === null || place.roomId === null || classId === null
      ? null
      : {
          rule: ruleOf(rule),
          start,
          startsLocal: place.startsLocal,
          zone: null,
          exceptions: left,
          classId,
          roomId: place.roomId,
          instructorId: place.instructorId,
          minutes: place.minutes,
          seats: place.seats,
          anyway: false,
        };
  const fields = add.error instanceof Problem ? add.error.fields : {};
  const warned = add.error instanceof Problem && add.error.code === 'timetable-warning';
  const save = (anyway: boolean) => {
    if (request === null) return;
    add.mutate(
      { ...request, anyway },
      {
        onSuccess: ({ id, sessions }) => {
          notifications.show({ message: `The series is made: ${sessions} sessions laid out.` });
          void navigate({
            to: '/studio/series/$seriesId',
            params: { seriesId: String(id) },
          });
        },
      },
    );
  };

  return (
    <>
      <Title mb="md">New series</Title>
      <div className={classes.two}>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            save(false);
          }}
        >
          <Stack>
            <Asked query={list} waiting={<Lines count={1} />}>
              {(studioClasses) => (
                <Select
                  label="Class"
                  searchable
                  allowDeselect={false}
                  data={studioClasses.map(({ id, name }) => ({ value: String(id), label: name }))}
                  value={classId === null ? null : String(classId)}
                  error={fields.classId}
                  onChange={(value) => {
                    const next = studioClasses.find(({ id }) => String(id) === value);
                    if (!next) return;
                    setClassId(next.id);
                    setPlace({ ...place, minutes: next.minutes });
                  }}
                />
              )}
            </Asked>
            <DayInput
              label="From"
              description="The rule counts from this day; the first date is the first that it gives."
              value={start}
              minDate={today}
              error={fields.start}
              onChange={setStart}
            />
            <RuleFields rule={rule} onChange={setRule} error={fields.rule} />
            <Asked query={locations} waiting={<Lines count={2} />}>
              {(places) => (
                <Asked query={staff} waiting={<Lines count={1} />}>
                  {(people) => (
                    <PlaceFields
                      place={place}
                      onChange={setPlace}
                      locations={places}
                      staff={people}
                      errors={fields}
                    />
                  )}
                </Asked>
              )}
            </Asked>
            <DayInput
              label="Leave out a date"
              description="Days on which this class is not held, though the rule gives them."
              value={null}
              onChange={(day) => {
                if (day !== null && !left.includes(day)) setLeft([...left, day].sort());
              }}
            />
            {left.length > 0 && (
              <Pill.Group>
                {left.map((day) => (
                  <Pill
                    key={day}
                    withRemoveButton
                    removeButtonProps={{
                      'aria-label': `Hold it on ${fullDate(day)}`,
                      tabIndex: 0,
                      'aria-hidden': false,
                    }}
                    onRemove={() => setLeft(left.filter((one) => one !== day))}
                  >
                    {fullDate(day)}
                  </Pill>
                ))}
              </Pill.Group>
            )}
            <Refused error={add.error}>
              {warned && (
                <Button variant="default" onClick={() => save(true)}>
                  Make it all the same
                </Button>
              )}
            </Refused>
            <Group>
              <Button type="submit" loading={add.isPending} disabled={request === null}>
                Make the series
              </Button>
            </Group>
          </Stack>
        </form>
        <PreviewDates request={request} unfinished={missing} />
      </div>
    </>
  );
}
