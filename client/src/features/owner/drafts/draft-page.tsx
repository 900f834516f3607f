import { Alert, Button, Group, SegmentedControl, Select, Text, Title } from '@mantine/core';
import { useHotkeys, useMediaQuery } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { draftQueries, useDiscardDraft } from '@/api/drafts';
import { useMe } from '@/api/session';
import { staffQueries } from '@/api/staff';
import type { Draft, DraftSession, Instructor, Location, StudioClass } from '@/api/types';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { tell } from '@/components/states/told';
import { addDays, dayAndMonth, mondayOf } from '@/components/time/days';
import { AgainstList } from './against-list';
import { Board } from './board';
import { CopyWeek } from './copy-week';
import { Hand } from './hand';
import { Meanwhile } from './meanwhile';
import {
  clockName,
  conflictsByKey,
  hoursOf,
  linesOf,
  otherClocks,
  spotOf,
  type Spot,
  type View,
} from './place';
import { Publish } from './publish';
import { SessionList } from './session-list';
import { SessionPanel } from './session-panel';
import { useHeld } from './use-held';
import { useSteps } from './use-steps';
import { namesOf } from './words';

const route = getRouteApi('/inside/studio/drafts/$draftId');

export function DraftPage() {
  const id = Number(route.useParams().draftId);
  const draft = useQuery(draftQueries.one(id));
  const locations = useQuery(catalogueQueries.locations());
  const studioClasses = useQuery(catalogueQueries.classes());
  const instructors = useQuery(staffQueries.instructors());
  return (
    <Asked query={draft} waiting={<Lines count={4} height={120} />}>
      {(shown) =>
        shown.draft.status === 'open' ? (
          <Asked query={locations}>
            {(places) => (
              <Asked query={studioClasses}>
                {(of) => (
                  <Asked query={instructors}>
                    {(who) => (
                      <OpenDraft
                        key={id}
                        draft={shown}
                        locations={places}
                        studioClasses={of}
                        instructors={who}
                      />
                    )}
                  </Asked>
                )}
              </Asked>
            )}
          </Asked>
        ) : (
          <Ended draft={shown} />
        )
      }
    </Asked>
  );
}

const Ended = ({ draft: { draft } }: { draft: Draft }) => (
  <>
    <Title mb="sm">{draft.name}</Title>
    <Text>
      This draft{' '}
      {draft.status === 'published' ? 'is published: it is the timetable now.' : 'was thrown away.'}{' '}
      <Go to="/studio" search={{ week: draft.from }}>
        See the week
      </Go>
    </Text>
  </>
);

interface Props {
  draft: Draft;
  locations: readonly Location[];
  studioClasses: readonly StudioClass[];
  instructors: readonly Instructor[];
}

type Looks = View | 'list';

function OpenDraft({ draft, locations, studioClasses, instructors }: Props) {
  const { today } = useMe();
  const navigate = useNavigate();
  const search = route.useSearch();
  const narrow = useMediaQuery('(max-width: 62em)', false, { getInitialValueInEffect: false });
  const { from, to } = draft.draft;
  const monday = mondayOf(search.week ?? (today > from && today <= to ? today : from));
  const looks: Looks = narrow ? 'list' : (search.by ?? 'room');
  const view: View = looks === 'list' ? 'room' : looks;
  const show = (change: { week?: string; by?: Looks; at?: number }) =>
    void navigate({
      to: '/studio/drafts/$draftId',
      params: { draftId: String(draft.draft.id) },
      search: { ...search, ...change },
      replace: true,
    });

  const named = namesOf(locations, studioClasses, instructors);
  const [last, setLast] = useState('');
  const steps = useSteps(draft, setLast);
  const put = (session: DraftSession, spot: Spot) =>
    steps.put(session, spot, wordsOf(session, spot));
  const wordsOf = (session: DraftSession, spot: Spot) =>
    `${named.className(spot)}: ${named.changes(spotOf(session), spot).join('; ')}`;
  const holding = useHeld(draft, put);
  const [panel, setPanel] = useState<{ session: DraftSession | null; start: Spot } | null>(null);
  const [dialog, setDialog] = useState<'copy' | 'publish' | 'discard' | null>(null);
  useHotkeys([
    ['mod+Z', () => steps.undo?.()],
    ['mod+shift+Z', () => steps.redo?.()],
    ['mod+Y', () => steps.redo?.()],
  ]);

  const sessions = draft.sessions.filter(({ isHeld, sessionId }) => isHeld || sessionId != null);
  const days = Array.from({ length: 7 }, (_, day) => addDays(monday, day));
  const ofWeek = sessions.filter(({ on }) => days.includes(on));
  const shownPlaces =
    search.at == null ? locations : locations.filter(({ id }) => id === search.at);
  const lines = linesOf(view, shownPlaces, instructors);
  const conflicts = conflictsByKey(draft.conflicts);
  const others = otherClocks(locations, monday);
  // A held session takes the week with it.
  const shownMonday = holding.held === null ? monday : mondayOf(holding.held.at.on);

  const open = (session: DraftSession) => setPanel({ session, start: spotOf(session) });
  const add = (at: { on: string; startsLocal: string }, line?: { id: number | null }) => {
    const room = shownPlaces[0]?.rooms[0] ?? locations[0]?.rooms[0];
    const roomId = view === 'room' ? (line?.id ?? room?.id ?? 0) : (room?.id ?? 0);
    setPanel({
      session: null,
      start: {
        classId: 0,
        roomId,
        instructorId: view === 'instructor' ? (line?.id ?? null) : null,
        minutes: 50,
        seats: named.seatsOf(roomId) ?? 10,
        isHeld: true,
        ...at,
      },
    });
  };

  return (
    <>
      <Group justify="space-between" align="flex-end" mb="xs">
        <div>
          <Text c="dimmed">
            <Go to="/studio/drafts">Drafts</Go> · {draft.draft.name}
          </Text>
          <Title>
            {dayAndMonth(shownMonday)} to {dayAndMonth(addDays(shownMonday, 6))}
          </Title>
        </div>
        <Group gap="xs">
          <Button
            variant="default"
            disabled={monday <= mondayOf(from)}
            onClick={() => show({ week: addDays(monday, -7) })}
          >
            Week before
          </Button>
          <Button
            variant="default"
            disabled={addDays(monday, 7) > to}
            onClick={() => show({ week: addDays(monday, 7) })}
          >
            Week after
          </Button>
          <Button onClick={() => setDialog('publish')}>Publish…</Button>
        </Group>
      </Group>
      <Group justify="space-between" mb="sm" gap="sm">
        <Group gap="xs">
          {!narrow && (
            <SegmentedControl
              aria-label="How the week is shown"
              data={[
                { value: 'room', label: 'By room' },
                { value: 'instructor', label: 'By instructor' },
                { value: 'list', label: 'List' },
              ]}
              value={looks}
              onChange={(value) => show({ by: value })}
            />
          )}
          {looks === 'room' && locations.length > 1 && (
            <Select
              aria-label="Location"
              w="12rem"
              placeholder="All locations"
              clearable
              clearButtonProps={{ 'aria-label': 'All locations' }}
              data={locations.map(({ id, name }) => ({ value: String(id), label: name }))}
              value={search.at == null ? null : String(search.at)}
              onChange={(value) => show({ at: value === null ? undefined : Number(value) })}
            />
          )}
        </Group>
        <Group gap="xs">
          <Button
            variant="default"
            disabled={steps.undo === undefined || steps.busy}
            onClick={steps.undo}
          >
            Undo
          </Button>
          <Button
            variant="default"
            disabled={steps.redo === undefined || steps.busy}
            onClick={steps.redo}
          >
            Redo
          </Button>
          <Button
            variant="default"
            onClick={() => add({ on: clamp(monday, from, to), startsLocal: '10:00' })}
          >
            Add a session
          </Button>
          <Button variant="default" onClick={() => setDialog('copy')}>
            Copy a week
          </Button>
          <Button variant="default" onClick={() => setDialog('discard')}>
            Throw away
          </Button>
        </Group>
      </Group>
      {dialog === 'discard' && (
        <Discard
          draft={draft}
          onClose={() => setDialog(null)}
          onDone={() => void navigate({ to: '/studio/drafts' })}
        />
      )}
      {steps.refused !== null && (
        <Refused error={steps.refused.error}>
          <Button size="xs" variant="default" onClick={steps.refused.again}>
            Do it on the draft as it is now
          </Button>
          <Button size="xs" variant="default" onClick={steps.forget}>
            Leave it
          </Button>
        </Refused>
      )}
      <Meanwhile draft={draft} named={named} />
      {others.length > 0 && looks !== 'room' && (
        <Text mb="xs">
          Each session stands at the hour of its own location&apos;s clock:{' '}
          {locations.map((one) => `${one.name} goes by ${clockName(one)}`).join(', ')}. The same
          hour in two of them is not the same moment.
        </Text>
      )}
      <AgainstList
        draft={draft}
        sessions={ofWeek}
        conflicts={draft.conflicts}
        named={named}
        open={open}
      />
      {looks === 'list' ? (
        <SessionList
          days={days}
          sessions={ofWeek}
          conflicts={conflicts}
          named={named}
          open={open}
        />
      ) : (
        <>
          <Board
            monday={shownMonday}
            today={today}
            sessions={sessions}
            conflicts={conflicts}
            ground={{ view, lines, first: from, last: to }}
            hours={hoursOf(sessions.map(spotOf))}
            holding={holding}
            named={named}
            open={open}
            add={add}
          />
          <Hand holding={holding} named={named} last={last} />
        </>
      )}
      {panel !== null && (
        <SessionPanel
          key={panel.session?.id ?? 'new'}
          draft={draft}
          session={panel.session}
          start={panel.start}
          locations={locations}
          classes={studioClasses}
          instructors={instructors}
          named={named}
          onClose={() => setPanel(null)}
          onSave={(spot) => {
            if (panel.session === null) steps.add(spot, `Added: ${named.session(spot)}`);
            else put(panel.session, spot);
            setPanel(null);
          }}
        />
      )}
      {dialog === 'copy' && (
        <CopyWeek
          draft={draft}
          monday={monday}
          steps={steps}
          onClose={(shown) => {
            setDialog(null);
            if (shown !== undefined) show({ week: shown });
          }}
        />
      )}
      {dialog === 'publish' && (
        <Publish
          draft={draft}
          named={named}
          onClose={() => setDialog(null)}
          onDone={(words) => {
            tell(words);
            void navigate({ to: '/studio', search: { week: monday } });
          }}
        />
      )}
    </>
  );
}

const clamp = (day: string, from: string, to: string) => (day < from ? from : day > to ? to : day);

function Discard({
  draft,
  onClose,
  onDone,
}: {
  draft: Draft;
  onClose: () => void;
  onDone: () => void;
}) {
  const discard = useDiscardDraft();
  return (
    <Alert color="brick" variant="light" mb="sm" title="Throw this draft away?">
      The timetable stays as it is; what was done in this draft is gone.
      <Refused error={discard.error} />
      <Group mt="xs">
        <Button
          color="brick"
          size="xs"
          loading={discard.isPending}
          onClick={() => discard.mutate(draft.draft.id, { onSuccess: onDone })}
        >
          Throw it away
        </Button>
        <Button size="xs" variant="default" onClick={onClose}>
          Keep it
        </Button>
      </Group>
    </Alert>
  );
}
