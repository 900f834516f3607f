import { Button, Checkbox, Group, Radio, Select, Stack, Text, Title } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { Problem } from '@/api/problem';
import { useChangeSeries } from '@/api/series';
import { staffQueries } from '@/api/staff';
import type { Series, SeriesChange } from '@/api/types';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { longDay } from '@/components/time/days';
import { Consequences, isRefused, needsWord } from './consequences';
import { PlaceFields, type PlaceDraft } from './place-fields';
import { draftOf, ruleOf, unfinished, type RuleDraft } from './rule-draft';
import { RuleFields } from './rule-fields';

type Scope = SeriesChange['scope'];

/** What to change and how far; then what it does; then, and only then, it is kept. */
export function ChangeSeries({ series }: { series: Series }) {
  const ahead = series.dates.filter(({ state }) => state === 'held');
  const [scope, setScope] = useState<Scope>('fromHere');
  const [on, setOn] = useState<string | null>(ahead[0]?.seriesOn ?? null);
  const [rule, setRule] = useState<RuleDraft | null>(null);
  const [byHandToo, setByHandToo] = useState(false);
  const [anyway, setAnyway] = useState(false);
  const [place, setPlace] = useState<PlaceDraft>({
    startsLocal: series.startsLocal,
    minutes: series.minutes,
    roomId: series.roomId,
    instructorId: series.instructorId ?? null,
    seats: series.seats,
  });
  const locations = useQuery(catalogueQueries.locations());
  const staff = useQuery(staffQueries.instructors());
  const look = useChangeSeries(series.id);
  const keep = useChangeSeries(series.id);
  const navigate = useNavigate();

  // Whatever is touched, what was looked at is not what would be kept.
  const touched =
    <T,>(set: (value: T) => void) =>
    (value: T) => {
      look.reset();
      keep.reset();
      set(value);
    };
  const changesRule = scope !== 'thisOne' && rule !== null;
  const missing = changesRule ? unfinished(rule) : null;
  const body = (): SeriesChange | null =>
    place.roomId === null || missing !== null || (scope !== 'all' && on === null)
      ? null
      : {
          scope,
          on: scope === 'all' ? null : on,
          rule: changesRule ? ruleOf(rule) : null,
          startsLocal: place.startsLocal,
          roomId: place.roomId,
          instructorId: place.instructorId,
          minutes: place.minutes,
          seats: place.seats,
          byHandToo,
          anyway,
        };
  const problem = look.error ?? keep.error;
  const fields = problem instanceof Problem ? problem.fields : {};
  const seen = look.data;
  const staying = seen?.stayByHand ?? 0;

  return (
    <section aria-labelledby="change">
      <Title order={2} id="change">
        Change it
      </Title>
      <Stack mt="xs">
        <Radio.Group
          label="How far"
          value={scope}
          onChange={touched((value: string) => setScope(value as Scope))}
        >
          <Stack gap="xs" mt={4}>
            <Radio value="thisOne" label="One date" />
            <Radio value="fromHere" label="From a date on" />
            <Radio value="all" label="All that lies ahead" />
          </Stack>
        </Radio.Group>
        {scope !== 'all' && (
          <Select
            label={scope === 'thisOne' ? 'Which date' : 'From which date'}
            allowDeselect={false}
            data={ahead.map(({ seriesOn }) => ({ value: seriesOn, label: longDay(seriesOn) }))}
            value={on}
            error={fields.on}
            onChange={touched(setOn)}
          />
        )}
        <Asked query={locations} waiting={<Lines count={2} />}>
          {(places) => (
            <Asked query={staff} waiting={<Lines count={1} />}>
              {(people) => (
                <PlaceFields
                  place={place}
                  onChange={touched(setPlace)}
                  locations={places}
                  staff={people}
                  errors={fields}
                />
              )}
            </Asked>
          )}
        </Asked>
        {scope !== 'thisOne' && (
          <>
            <Checkbox
              label="Change its days as well"
              checked={rule !== null}
              onChange={(event) =>
                touched(setRule)(event.currentTarget.checked ? draftOf(series.rule) : null)
              }
            />
            {rule !== null && (
              <RuleFields
                rule={rule}
                onChange={touched(setRule)}
                error={fields.rule ?? missing ?? undefined}
              />
            )}
            <Checkbox
              label="Dates that were changed or called off by hand follow too"
              checked={byHandToo}
              onChange={(event) => touched(setByHandToo)(event.currentTarget.checked)}
            />
          </>
        )}
        <Refused error={problem} />
        <Group>
          <Button
            variant={seen === undefined ? 'filled' : 'default'}
            loading={look.isPending}
            disabled={body() === null}
            onClick={() => {
              const wanted = body();
              setAnyway(false);
              if (wanted) look.mutate({ dryRun: true, body: wanted });
            }}
          >
            See what it changes
          </Button>
        </Group>
        {seen && (
          <>
            {seen.endedWords != null && (
              <Text>
                This series becomes: {seen.endedWords}. From then on: {seen.words}.
              </Text>
            )}
            {staying > 0 && (
              <Text>
                {staying === 1
                  ? '1 date was changed by hand and keeps what was changed.'
                  : `${staying} dates were changed by hand and keep what was changed.`}
              </Text>
            )}
            <Consequences changes={seen.changes} anyway={anyway} onAnyway={setAnyway} />
            <Group>
              <Button
                loading={keep.isPending}
                disabled={isRefused(seen.changes) || (needsWord(seen.changes) && !anyway)}
                onClick={() => {
                  const wanted = body();
                  if (!wanted) return;
                  keep.mutate(
                    { dryRun: false, body: wanted },
                    {
                      onSuccess: ({ seriesId, words }) => {
                        notifications.show({ message: `Kept: ${words}.` });
                        look.reset();
                        if (seriesId != null && seriesId !== series.id)
                          void navigate({
                            to: '/studio/series/$seriesId',
                            params: { seriesId: String(seriesId) },
                          });
                      },
                    },
                  );
                }}
              >
                Keep the change
              </Button>
            </Group>
          </>
        )}
      </Stack>
    </section>
  );
}
