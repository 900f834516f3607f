import {
  createRootRouteWithContext,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  redirect,
} from '@tanstack/react-router';
import type { QueryClient } from '@tanstack/react-query';
import type { IncidentFilter } from '@/api/incidents';
import { sessionQueries } from '@/api/session';
import { messageFilterIn } from '@/components/messages/filter';
import { movementFilterIn, ruleFilterIn } from '@/components/rules/filters';
import { questionIn } from '@/components/rules/question';
import { deskAt, desksOf, landingOf } from './desks';
import { Lost, Trouble } from './lost';
import { Opening } from './opening';
import { queries } from './queries';

const root = createRootRouteWithContext<{ queries: QueryClient }>()({ component: Outlet });

const textIn = (search: Record<string, unknown>, name: string) =>
  typeof search[name] === 'string' ? search[name] : undefined;

/** A page of ours to return to; anything else is dropped. */
const pageIn = (search: Record<string, unknown>, name: string) => {
  const page = textIn(search, name);
  return page?.startsWith('/') === true && !page.startsWith('//') ? page : undefined;
};

const dayIn = (search: Record<string, unknown>, name: string) => {
  const day = textIn(search, name);
  return day !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(day) ? day : undefined;
};

const idIn = (search: Record<string, unknown>, name: string) =>
  typeof search[name] === 'number' ? search[name] : undefined;

const signIn = createRoute({
  getParentRoute: () => root,
  path: '/sign-in',
  validateSearch: (search): { to?: string } => ({ to: pageIn(search, 'to') }),
  beforeLoad: async ({ context }) => {
    const me = await context.queries.query({ ...sessionQueries.me(), staleTime: 'static' });
    if (me !== null) throw redirect({ to: landingOf(me) });
  },
  component: lazyRouteComponent(() => import('./sign-in'), 'SignIn'),
});

/** Only for those who are signed in and work at the desk the page belongs to. */
async function letIn(page: { pathname: string; href: string }) {
  const me = await queries.query({ ...sessionQueries.me(), staleTime: 'static' });
  if (me === null)
    throw redirect({ to: '/sign-in', search: page.href === '/' ? {} : { to: page.href } });
  const desk = deskAt(page.pathname);
  if (desk === undefined || !desksOf(me).includes(desk)) throw redirect({ to: landingOf(me) });
}

const inside = createRoute({
  getParentRoute: () => root,
  id: 'inside',
  beforeLoad: ({ location }) => letIn(location),
  component: lazyRouteComponent(() => import('./shell'), 'Shell'),
});

/** Pages that have the window to themselves. */
const alone = createRoute({
  getParentRoute: () => root,
  id: 'alone',
  beforeLoad: ({ location }) => letIn(location),
});

const home = createRoute({ getParentRoute: () => inside, path: '/' });

const day = createRoute({
  getParentRoute: () => inside,
  path: '/desk',
  validateSearch: (search): { day?: string; session?: number } => ({
    day: dayIn(search, 'day'),
    session: idIn(search, 'session'),
  }),
  component: lazyRouteComponent(() => import('@/features/front-desk/day-page'), 'DayPage'),
});
const deskCard = createRoute({
  getParentRoute: () => inside,
  path: '/desk/clients/$clientId',
  component: lazyRouteComponent(() => import('@/features/front-desk/card-page'), 'CardPage'),
});
const handed = createRoute({
  getParentRoute: () => alone,
  path: '/desk/clients/$clientId/questions',
  component: lazyRouteComponent(() => import('@/features/front-desk/handed-page'), 'HandedPage'),
});
const newClient = createRoute({
  getParentRoute: () => inside,
  path: '/desk/new',
  component: lazyRouteComponent(() => import('@/features/front-desk/new-client'), 'NewClientPage'),
});
const moves = createRoute({
  getParentRoute: () => inside,
  path: '/desk/moves',
  component: lazyRouteComponent(() => import('@/features/front-desk/moves-page'), 'MovesPage'),
});
const flags = createRoute({
  getParentRoute: () => inside,
  path: '/desk/flags',
  validateSearch: (search): { kind?: string } => ({ kind: textIn(search, 'kind') }),
  component: lazyRouteComponent(() => import('@/features/front-desk/flags-page'), 'FlagsPage'),
});
const waiting = createRoute({
  getParentRoute: () => inside,
  path: '/desk/waiting',
  component: lazyRouteComponent(() => import('@/features/front-desk/waiting-page'), 'WaitingPage'),
});

const letters = createRoute({
  getParentRoute: () => inside,
  path: '/letters',
  validateSearch: (search): { letter?: number } => ({ letter: idIn(search, 'letter') }),
  component: lazyRouteComponent(() => import('@/features/letters/letters-page'), 'LettersPage'),
});
const lettersRead = createRoute({
  getParentRoute: () => inside,
  path: '/letters/read',
  component: lazyRouteComponent(() => import('@/features/letters/read-page'), 'ReadPage'),
});
const lettersFind = createRoute({
  getParentRoute: () => inside,
  path: '/letters/find',
  component: lazyRouteComponent(() => import('@/features/letters/find-page'), 'FindPage'),
});
const lettersPerson = createRoute({
  getParentRoute: () => inside,
  path: '/letters/people/$clientId',
  component: lazyRouteComponent(() => import('@/features/letters/person-page'), 'PersonPage'),
});

/** What her clinician is asked, on paper; the same page for everybody who may print it. */
const requestLetter = {
  component: lazyRouteComponent(
    () => import('@/components/letters/request-page'),
    'RequestLetterPage',
  ),
};
const deskRequest = createRoute({
  getParentRoute: () => inside,
  path: '/desk/clients/$clientId/letters/request',
  ...requestLetter,
});
const studioRequest = createRoute({
  getParentRoute: () => inside,
  path: '/studio/people/$clientId/letters/request',
  ...requestLetter,
});
const lettersRequest = createRoute({
  getParentRoute: () => inside,
  path: '/letters/people/$clientId/letters/request',
  ...requestLetter,
});
const myRequest = createRoute({
  getParentRoute: () => inside,
  path: '/my/letters/request',
  ...requestLetter,
});

const teach = createRoute({
  getParentRoute: () => inside,
  path: '/teach',
  component: lazyRouteComponent(() => import('@/features/instructor/next-page'), 'NextPage'),
});
const teachSession = createRoute({
  getParentRoute: () => inside,
  path: '/teach/sessions/$sessionId',
  component: lazyRouteComponent(() => import('@/features/instructor/session-page'), 'SessionPage'),
});
const teachClass = createRoute({
  getParentRoute: () => alone,
  path: '/teach/sessions/$sessionId/class',
  validateSearch: (search): { at?: number | 'notes' } => ({
    at: search.at === 'notes' ? 'notes' : idIn(search, 'at'),
  }),
  component: lazyRouteComponent(() => import('@/features/instructor/room/class-page'), 'ClassPage'),
});
const teachWeek = createRoute({
  getParentRoute: () => inside,
  path: '/teach/week',
  validateSearch: (search): { from?: string } => ({ from: dayIn(search, 'from') }),
  component: lazyRouteComponent(() => import('@/features/instructor/weeks-page'), 'WeeksPage'),
});
const teachCover = createRoute({
  getParentRoute: () => inside,
  path: '/teach/cover',
  component: lazyRouteComponent(
    () => import('@/features/instructor/cover/cover-page'),
    'TeachCoverPage',
  ),
});
const teachMovements = createRoute({
  getParentRoute: () => inside,
  path: '/teach/movements',
  validateSearch: movementFilterIn,
  component: lazyRouteComponent(
    () => import('@/features/instructor/movements-page'),
    'MovementsPage',
  ),
});
const teachWhatIf = createRoute({
  getParentRoute: () => inside,
  path: '/teach/what-if',
  validateSearch: questionIn,
  component: lazyRouteComponent(() => import('@/features/instructor/what-if-page'), 'WhatIfPage'),
});

const teachCalendar = createRoute({
  getParentRoute: () => inside,
  path: '/teach/calendar',
  component: lazyRouteComponent(
    () => import('@/features/instructor/calendar-page'),
    'CalendarPage',
  ),
});

const planList = {
  component: lazyRouteComponent(() => import('@/features/plans/plans-page'), 'PlansPage'),
};
const planOfClass = {
  validateSearch: (search: Record<string, unknown>): { session?: number } => ({
    session: idIn(search, 'session'),
  }),
  component: lazyRouteComponent(() => import('@/features/plans/plan-page'), 'PlanPage'),
};
const teachPlans = createRoute({
  getParentRoute: () => inside,
  path: '/teach/plans',
  ...planList,
});
const teachPlan = createRoute({
  getParentRoute: () => inside,
  path: '/teach/plans/$classId',
  ...planOfClass,
});
const studioPlans = createRoute({
  getParentRoute: () => inside,
  path: '/studio/plans',
  ...planList,
});
const studioPlan = createRoute({
  getParentRoute: () => inside,
  path: '/studio/plans/$classId',
  ...planOfClass,
});

const my = createRoute({
  getParentRoute: () => inside,
  path: '/my',
  component: lazyRouteComponent(() => import('@/features/client/my-page'), 'MyPage'),
});
const myDetails = createRoute({
  getParentRoute: () => inside,
  path: '/my/details',
  component: lazyRouteComponent(() => import('@/features/client/details-page'), 'DetailsPage'),
});

const myQuestions = createRoute({
  getParentRoute: () => inside,
  path: '/my/questions',
  component: lazyRouteComponent(() => import('@/features/client/questions-page'), 'QuestionsPage'),
});
const notRight = createRoute({
  getParentRoute: () => inside,
  path: '/my/not-right',
  component: lazyRouteComponent(() => import('@/features/client/not-right-page'), 'NotRightPage'),
});
const myLetters = createRoute({
  getParentRoute: () => inside,
  path: '/my/letters',
  component: lazyRouteComponent(() => import('@/features/client/letters-page'), 'LettersPage'),
});

const myCalendar = createRoute({
  getParentRoute: () => inside,
  path: '/my/calendar',
  component: lazyRouteComponent(() => import('@/features/client/calendar-page'), 'CalendarPage'),
});
const myRecord = createRoute({
  getParentRoute: () => inside,
  path: '/my/record',
  component: lazyRouteComponent(() => import('@/features/client/record-page'), 'RecordPage'),
});

const week = createRoute({
  getParentRoute: () => inside,
  path: '/studio',
  validateSearch: (search): { week?: string } => ({ week: dayIn(search, 'week') }),
  component: lazyRouteComponent(() => import('@/features/owner/week-page'), 'WeekPage'),
});
const drafts = createRoute({
  getParentRoute: () => inside,
  path: '/studio/drafts',
  component: lazyRouteComponent(() => import('@/features/owner/drafts/drafts-page'), 'DraftsPage'),
});
const draft = createRoute({
  getParentRoute: () => inside,
  path: '/studio/drafts/$draftId',
  validateSearch: (
    search,
  ): { week?: string; by?: 'room' | 'instructor' | 'list'; at?: number } => ({
    week: dayIn(search, 'week'),
    by: (['room', 'instructor', 'list'] as const).find((by) => by === search.by),
    at: idIn(search, 'at'),
  }),
  component: lazyRouteComponent(() => import('@/features/owner/drafts/draft-page'), 'DraftPage'),
});
const people = createRoute({
  getParentRoute: () => inside,
  path: '/studio/people',
  component: lazyRouteComponent(() => import('@/features/owner/people-page'), 'PeoplePage'),
});
const person = createRoute({
  getParentRoute: () => inside,
  path: '/studio/people/$clientId',
  component: lazyRouteComponent(() => import('@/features/owner/person-page'), 'PersonPage'),
});
const personRecord = createRoute({
  getParentRoute: () => inside,
  path: '/studio/people/$clientId/record',
  component: lazyRouteComponent(
    () => import('@/features/owner/erasures/record-page'),
    'RecordPage',
  ),
});
const personErase = createRoute({
  getParentRoute: () => inside,
  path: '/studio/people/$clientId/erase',
  component: lazyRouteComponent(() => import('@/features/owner/erasures/erase-page'), 'ErasePage'),
});
const erasures = createRoute({
  getParentRoute: () => inside,
  path: '/studio/erasures',
  component: lazyRouteComponent(
    () => import('@/features/owner/erasures/erasures-page'),
    'ErasuresPage',
  ),
});
const erasureKept = createRoute({
  getParentRoute: () => inside,
  path: '/studio/erasures/$erasureId',
  component: lazyRouteComponent(() => import('@/features/owner/erasures/kept-page'), 'KeptPage'),
});
const series = createRoute({
  getParentRoute: () => inside,
  path: '/studio/series',
  component: lazyRouteComponent(() => import('@/features/owner/series/series-page'), 'SeriesPage'),
});
const newSeries = createRoute({
  getParentRoute: () => inside,
  path: '/studio/series/new',
  component: lazyRouteComponent(
    () => import('@/features/owner/series/new-series-page'),
    'NewSeriesPage',
  ),
});
const oneSeries = createRoute({
  getParentRoute: () => inside,
  path: '/studio/series/$seriesId',
  component: lazyRouteComponent(
    () => import('@/features/owner/series/one-series-page'),
    'OneSeriesPage',
  ),
});
const closures = createRoute({
  getParentRoute: () => inside,
  path: '/studio/closures',
  component: lazyRouteComponent(
    () => import('@/features/owner/series/closures-page'),
    'ClosuresPage',
  ),
});
const studioSession = createRoute({
  getParentRoute: () => inside,
  path: '/studio/sessions/$sessionId',
  component: lazyRouteComponent(
    () => import('@/features/owner/series/session-page'),
    'SessionPage',
  ),
});
const letGo = createRoute({
  getParentRoute: () => inside,
  path: '/desk/let-go',
  component: lazyRouteComponent(() => import('@/features/front-desk/let-go-page'), 'LetGoPage'),
});
const cover = createRoute({
  getParentRoute: () => inside,
  path: '/studio/cover',
  component: lazyRouteComponent(() => import('@/features/owner/cover/cover-page'), 'CoverPage'),
});
const staff = createRoute({
  getParentRoute: () => inside,
  path: '/studio/staff',
  component: lazyRouteComponent(() => import('@/features/owner/staff-page'), 'StaffPage'),
});
const instructor = createRoute({
  getParentRoute: () => inside,
  path: '/studio/staff/$instructorId',
  component: lazyRouteComponent(
    () => import('@/features/owner/staff/instructor-page'),
    'InstructorPage',
  ),
});
const pay = createRoute({
  getParentRoute: () => inside,
  path: '/studio/pay',
  component: lazyRouteComponent(() => import('@/features/owner/staff/pay-page'), 'PayPage'),
});
const travel = createRoute({
  getParentRoute: () => inside,
  path: '/studio/travel',
  component: lazyRouteComponent(() => import('@/features/owner/staff/travel-page'), 'TravelPage'),
});
const teachHours = createRoute({
  getParentRoute: () => inside,
  path: '/teach/hours',
  component: lazyRouteComponent(() => import('@/features/instructor/hours-page'), 'HoursPage'),
});
const rules = createRoute({
  getParentRoute: () => inside,
  path: '/studio/rules',
  component: lazyRouteComponent(() => import('@/features/owner/rules/rules-layout'), 'RulesLayout'),
});
const rulesList = createRoute({
  getParentRoute: () => rules,
  path: '/',
  validateSearch: ruleFilterIn,
  component: lazyRouteComponent(() => import('@/features/owner/rules/rules-page'), 'RulesPage'),
});
const rulesMovements = createRoute({
  getParentRoute: () => rules,
  path: '/movements',
  validateSearch: movementFilterIn,
  component: lazyRouteComponent(
    () => import('@/features/owner/rules/movements-page'),
    'MovementsPage',
  ),
});
const rulesWhatIf = createRoute({
  getParentRoute: () => rules,
  path: '/what-if',
  validateSearch: questionIn,
  component: lazyRouteComponent(() => import('@/features/owner/rules/what-if-page'), 'WhatIfPage'),
});
const rulesPolicies = createRoute({
  getParentRoute: () => rules,
  path: '/policies',
  component: lazyRouteComponent(
    () => import('@/features/owner/rules/policies-page'),
    'PoliciesPage',
  ),
});
const rulesSources = createRoute({
  getParentRoute: () => rules,
  path: '/sources',
  component: lazyRouteComponent(() => import('@/features/owner/rules/sources-page'), 'SourcesPage'),
});
const rulesImport = createRoute({
  getParentRoute: () => rules,
  path: '/import',
  component: lazyRouteComponent(
    () => import('@/features/owner/rules/rules-import-page'),
    'RulesImportPage',
  ),
});
const audit = createRoute({
  getParentRoute: () => inside,
  path: '/studio/audit',
  validateSearch: (search): { client?: number } => ({ client: idIn(search, 'client') }),
  component: lazyRouteComponent(() => import('@/features/owner/audit/audit-page'), 'AuditPage'),
});
const incidents = createRoute({
  getParentRoute: () => inside,
  path: '/studio/incidents',
  validateSearch: (search): IncidentFilter => ({
    client: idIn(search, 'client'),
    session: idIn(search, 'session'),
    on: dayIn(search, 'on'),
    find: textIn(search, 'find'),
  }),
  component: lazyRouteComponent(
    () => import('@/features/owner/incidents/incidents-page'),
    'IncidentsPage',
  ),
});
const assign = createRoute({
  getParentRoute: () => inside,
  path: '/studio/assign',
  validateSearch: (search): { run?: number } => ({ run: idIn(search, 'run') }),
  component: lazyRouteComponent(() => import('@/features/owner/assign/assign-page'), 'AssignPage'),
});
const messages = createRoute({
  getParentRoute: () => inside,
  path: '/studio/messages',
  validateSearch: messageFilterIn,
  component: lazyRouteComponent(
    () => import('@/features/owner/messages/messages-page'),
    'MessagesPage',
  ),
});
const messageKinds = createRoute({
  getParentRoute: () => inside,
  path: '/studio/messages/kinds',
  component: lazyRouteComponent(() => import('@/features/owner/messages/kinds-page'), 'KindsPage'),
});
/** What was sent to the reader, and what she wants to receive; the same page for everybody. */
const messagesToMe = {
  component: lazyRouteComponent(
    () => import('@/components/messages/my-messages-page'),
    'MyMessagesPage',
  ),
};
const myMessages = createRoute({
  getParentRoute: () => inside,
  path: '/my/messages',
  ...messagesToMe,
});
const teachMessages = createRoute({
  getParentRoute: () => inside,
  path: '/teach/messages',
  ...messagesToMe,
});
/** Out of a message: open to whoever has the link, signed in or not. */
const stopMessages = createRoute({
  getParentRoute: () => root,
  path: '/mail/stop/$token',
  component: lazyRouteComponent(() => import('./stop-messages'), 'StopMessages'),
});
const jobs = createRoute({
  getParentRoute: () => inside,
  path: '/studio/jobs',
  component: lazyRouteComponent(() => import('@/features/owner/jobs-page'), 'JobsPage'),
});
const importing = createRoute({
  getParentRoute: () => inside,
  path: '/studio/import',
  component: lazyRouteComponent(() => import('@/features/owner/import-page'), 'ImportPage'),
});

export const router = createRouter({
  routeTree: root.addChildren([
    signIn,
    stopMessages,
    inside.addChildren([
      home,
      ...[day, deskCard, deskRequest, newClient, moves, flags, waiting, letGo],
      ...[series, newSeries, oneSeries, closures, studioSession],
      ...[letters, lettersRead, lettersFind, lettersPerson, lettersRequest],
      ...[
        teach,
        teachSession,
        teachWeek,
        teachCover,
        teachPlans,
        teachPlan,
        teachMovements,
        teachWhatIf,
      ],
      ...[teachCalendar, myCalendar],
      ...[my, myDetails, myQuestions, notRight, myLetters, myRequest, myRecord],
      ...[messages, messageKinds, myMessages, teachMessages],
      ...[personRecord, personErase, erasures, erasureKept],
      ...[instructor, pay, travel, teachHours],
      ...[drafts, draft],
      ...[
        week,
        people,
        person,
        studioRequest,
        cover,
        staff,
        incidents,
        audit,
        assign,
        jobs,
        importing,
        studioPlans,
        studioPlan,
      ],
      rules.addChildren([
        rulesList,
        rulesMovements,
        rulesWhatIf,
        rulesPolicies,
        rulesSources,
        rulesImport,
      ]),
    ]),
    alone.addChildren([teachClass, handed]),
  ]),
  context: { queries },
  defaultPreload: 'intent',
  defaultPendingComponent: Opening,
  defaultNotFoundComponent: Lost,
  defaultErrorComponent: Trouble,
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
