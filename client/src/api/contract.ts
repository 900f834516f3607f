// The routes as agreed, until the server's OpenAPI document carries them.

type Maybe<T> = T | null;

export type Role = 'owner' | 'frontDesk' | 'instructor' | 'client';
export type Verdict = 'suitable' | 'withModifications' | 'needsClearance' | 'notSuitable';
export type BirthMode = 'vaginal' | 'assisted' | 'caesarean' | 'unknown';
export type ScreeningOutcome = 'nothingFound' | 'clearanceNeeded' | 'noExercise';
export type Basis = 'lastPeriod' | 'scan' | 'transfer' | 'stated';
export type Phase = 'beforeDates' | 'pregnant' | 'born' | 'ended' | 'unknown';
export type Severity = 'info' | 'attention' | 'urgent';

export interface ProblemDetails {
  type?: string;
  title?: string;
  status?: number;
  detail?: string;
  code?: string;
  errors?: Record<string, string[]>;
}

export interface Me {
  accountId: number;
  email: string;
  name: string;
  roles: Role[];
  clientId?: Maybe<number>;
  instructorId?: Maybe<number>;
  studioName: string;
  today: string;
}
export interface Demo {
  loaded: boolean;
  accounts: { email: string; password: string; role: string; does: string }[];
}

export interface Scan {
  date: string;
  weeks: number;
  days: number;
}
export interface Evidence {
  lastPeriod?: Maybe<string>;
  cycleDays?: Maybe<number>;
  scan?: Maybe<Scan>;
  transfer?: Maybe<{ date: string; embryoDays: number }>;
  stated?: Maybe<string>;
}
export interface Reckoned {
  dueDate: string;
  basis: Basis;
  explanation: string;
  gestationalAge: { weeks: number; days: number };
  stage: string;
  stageName: string;
  term?: Maybe<string>;
}
export interface Dating {
  dueDate: string;
  basis: Basis;
  explanation: string;
  enteredAt: string;
  enteredBy: string;
}

export interface Stage {
  code: string;
  name: string;
  countsFrom: 'pregnancy' | 'birth';
  fromDay: number;
  toDay?: Maybe<number>;
  source: string;
}
export interface Factor {
  code: string;
  name: string;
  isCondition: boolean;
}
export interface Location {
  id: number;
  name: string;
  zone: string;
  emergencyNumber: string;
  rooms: { id: number; name: string; seats: number }[];
}
export interface ClassInfo {
  id: number;
  code: string;
  name: string;
  about: string;
  minutes: number;
  stages: string[];
  traits: string[];
  needsQualification?: Maybe<string>;
  effort: number;
}

export interface SessionSummary {
  id: number;
  classId: number;
  classCode: string;
  className: string;
  instructorId?: Maybe<number>;
  instructorName?: Maybe<string>;
  locationId: number;
  locationName: string;
  roomId: number;
  roomName: string;
  zone: string;
  startsAt: string;
  endsAt: string;
  on: string;
  startsLocal: string;
  endsLocal: string;
  minutes: number;
  seats: number;
  seatsTaken: number;
  waiting: number;
  checkedIn: number;
  status: 'open' | 'cancelled';
  stages: string[];
  unsuitable: number;
}

export interface Lift {
  text: string;
  on?: Maybe<string>;
}
export interface Reason {
  code: string;
  verdict: Verdict;
  text: string;
  source?: Maybe<{ cite: string; fromMemory: boolean }>;
  lift?: Maybe<Lift>;
}
export interface Fit {
  verdict: Verdict;
  label: string;
  summary: string;
  age?: Maybe<string>;
  stage?: Maybe<string>;
  stageName?: Maybe<string>;
  mayHaveGivenBirth: boolean;
  reasons: Reason[];
}
export interface Choice {
  session: SessionSummary;
  fit: Fit;
  bookingId?: Maybe<number>;
  bookingStatus?: Maybe<'booked' | 'waiting'>;
  place?: Maybe<number>;
  canBook: 'seat' | 'waitlist' | 'no';
  refusal?: Maybe<{ code: string; message: string }>;
}
export interface ClientBooking {
  bookingId: number;
  status: 'booked' | 'waiting';
  place?: Maybe<number>;
  checkedInAt?: Maybe<string>;
  session: SessionSummary;
  fit: Fit;
}
export interface Booked {
  bookingId: number;
  status: 'booked' | 'waiting';
  place?: Maybe<number>;
  fit: Fit;
}

export interface ClientFound {
  id: number;
  name: string;
  called: string;
  phone?: Maybe<string>;
  email?: Maybe<string>;
}
export interface PregnancyNow {
  dueDate?: Maybe<string>;
  basis?: Maybe<Basis>;
  explanation?: Maybe<string>;
  babies: number;
  age?: Maybe<string>;
  ageDays?: Maybe<number>;
  term?: Maybe<string>;
  stage?: Maybe<string>;
  stageName?: Maybe<string>;
  daysSinceBirth?: Maybe<number>;
  bornOn?: Maybe<string>;
  birthMode?: Maybe<BirthMode>;
  pastDue: boolean;
  mayHaveGivenBirth: boolean;
  nextStage?: Maybe<{ code: string; name: string; on: string }>;
}
export interface TapeData {
  start: string;
  end: string;
  today: string;
  dueDate?: Maybe<string>;
  bornOn?: Maybe<string>;
  bands: { stage: string; name: string; from: string; to?: Maybe<string> }[];
  letters: { from: string; to: string }[];
  bookings: {
    bookingId: number;
    sessionId: number;
    on: string;
    className: string;
    verdict: Verdict;
    status: 'booked' | 'waiting';
  }[];
}
export interface HeldFactor {
  id: number;
  code: string;
  name: string;
  isCondition: boolean;
  from: string;
  to?: Maybe<string>;
}
export interface ClientCard {
  id: number;
  name: string;
  called: string;
  phone?: Maybe<string>;
  email?: Maybe<string>;
  emergencyName?: Maybe<string>;
  emergencyPhone?: Maybe<string>;
  homeLocationId: number;
  zone: string;
  sharesConditions: boolean;
  phase: Phase;
  pregnancy?: Maybe<PregnancyNow>;
  clearance: {
    status: 'valid' | 'endsSoon' | 'expired' | 'none' | 'notNeeded';
    validUntil?: Maybe<string>;
    says: string;
  };
  screening: { status: 'current' | 'due' | 'none'; answeredOn?: Maybe<string>; says: string };
  onHold: boolean;
  needs: { code: string; says: string; by?: Maybe<string> }[];
  factors?: Maybe<HeldFactor[]>;
  tape?: Maybe<TapeData>;
}
export interface ClientDetails {
  called: string;
  name: string;
  phone?: Maybe<string>;
  email?: Maybe<string>;
  emergencyName?: Maybe<string>;
  emergencyPhone?: Maybe<string>;
  sharesConditions?: Maybe<boolean>;
}
export interface NewClient extends Evidence {
  name: string;
  called: string;
  phone?: Maybe<string>;
  email?: Maybe<string>;
  emergencyName?: Maybe<string>;
  emergencyPhone?: Maybe<string>;
  homeLocationId: number;
  babies?: Maybe<number>;
  bornOn?: Maybe<string>;
  birthMode?: Maybe<BirthMode>;
}

export interface RosterFlag {
  id: number;
  kind: string;
  severity: Severity;
  text: string;
  isNew: boolean;
}
export interface Person {
  bookingId: number;
  clientId: number;
  called: string;
  name: string;
  place?: Maybe<number>;
  checkedInAt?: Maybe<string>;
  verdict: Verdict;
  administrative?: Maybe<string>;
  age?: Maybe<string>;
  stage?: Maybe<string>;
  stageName?: Maybe<string>;
  daysSinceBirth?: Maybe<number>;
  mayHaveGivenBirth: boolean;
  instructions: { text: string; source?: Maybe<string> }[];
  flags: RosterFlag[];
  conditions: string[];
  emergency?: Maybe<{ name: string; phone: string }>;
}
export interface Roster {
  session: SessionSummary;
  people: Person[];
  waiting: Person[];
}
export interface Move {
  id: number;
  clientId: number;
  called: string;
  name: string;
  madeAt: string;
  crossesTo: string;
  crossesToName: string;
  crossesOn: string;
  steps: { bookingId: number; from: SessionSummary; to: SessionSummary; fit: Fit }[];
  without: SessionSummary[];
}
export interface Flag extends RosterFlag {
  since: string;
  clientId?: Maybe<number>;
  called?: Maybe<string>;
  name?: Maybe<string>;
  sessionId?: Maybe<number>;
  session?: Maybe<SessionSummary>;
}
export interface Instructor {
  id: number;
  name: string;
  called: string;
  email?: Maybe<string>;
  qualifications: {
    id: number;
    kind: string;
    issuedOn: string;
    expiresOn: string;
    status: 'valid' | 'endsSoon' | 'expired';
  }[];
  sessionsAhead: number;
}
export interface JobRun {
  ranAt: string;
  forDate?: Maybe<string>;
  zone?: Maybe<string>;
  byHand: boolean;
  result: string;
  changed: number;
}
export interface Job {
  name: string;
  title: string;
  does: string;
  runs: JobRun[];
}
export interface ImportReport {
  dryRun: boolean;
  rowsRead: number;
  rowsAccepted: number;
  refused: { line: number; column?: Maybe<string>; reason: string }[];
  preview: {
    line: number;
    name: string;
    called: string;
    stageName?: Maybe<string>;
    dueDate?: Maybe<string>;
  }[];
}

interface Json<T> {
  content: { 'application/json': T };
}
type Sends<B> = [B] extends [never] ? { requestBody?: never } : { requestBody: Json<B> };
type Route<R, Given, B = never> = { parameters: Given } & Sends<B> & {
    responses: {
      200: [R] extends [never] ? { content?: never } : Json<R>;
      default: { content: { 'application/problem+json': ProblemDetails } };
    };
  };
interface Plain {
  query?: never;
  path?: never;
}
interface Id {
  path: { id: number };
}
interface Dates {
  query?: { from?: string; to?: string };
}

export interface paths {
  '/api/session': {
    get: Route<Me, Plain>;
    post: Route<Me, Plain, { email: string; password: string }>;
    delete: Route<never, Plain>;
  };
  '/api/session/password': { put: Route<never, Plain, { current: string; next: string }> };
  '/api/demo': { get: Route<Demo, Plain> };
  '/api/dating': { post: Route<Reckoned, Plain, Evidence & { on: string }> };
  '/api/stages': { get: Route<Stage[], Plain> };
  '/api/factors': { get: Route<Factor[], Plain> };
  '/api/locations': { get: Route<Location[], Plain> };
  '/api/classes': { get: Route<ClassInfo[], Plain> };
  '/api/clients': {
    get: Route<ClientFound[], { query: { find: string } }>;
    post: Route<{ id: number }, Plain, NewClient>;
  };
  '/api/clients/{id}': {
    get: Route<ClientCard, Id>;
    put: Route<never, Id, ClientDetails>;
  };
  '/api/clients/{id}/datings': {
    get: Route<Dating[], Id>;
    post: Route<
      { dueDate: string; basis: Basis; explanation: string; bookingsNowUnsuitable: number },
      Id,
      Evidence
    >;
  };
  '/api/clients/{id}/factors': {
    post: Route<{ id: number }, Id, { code: string; from: string; to?: Maybe<string> }>;
  };
  '/api/clients/{id}/factors/{factorId}/end': {
    post: Route<never, { path: { id: number; factorId: number } }, { on: string }>;
  };
  '/api/clients/{id}/clearances': {
    post: Route<never, Id, { issuedBy: string; issuedOn: string; expiresOn: string }>;
  };
  '/api/clients/{id}/screenings': {
    post: Route<never, Id, { answeredOn: string; outcome: ScreeningOutcome }>;
  };
  '/api/clients/{id}/holds': { post: Route<never, Id, Record<string, never>> };
  '/api/clients/{id}/birth': {
    post: Route<{ bookingsReleased: number }, Id, { on: string; mode: BirthMode }>;
  };
  '/api/clients/{id}/loss': {
    post: Route<{ bookingsReleased: number }, Id, { on?: Maybe<string> }>;
  };
  '/api/clients/{id}/bookings': { get: Route<ClientBooking[], Id & Dates> };
  '/api/clients/{id}/sessions': { get: Route<Choice[], Id & Dates> };
  '/api/sessions': { get: Route<SessionSummary[], Dates> };
  '/api/sessions/{id}': { get: Route<SessionSummary, Id> };
  '/api/sessions/{id}/roster': { get: Route<Roster, Id> };
  '/api/sessions/{id}/roster/read': { post: Route<never, Id> };
  '/api/sessions/{id}/bookings': {
    post: Route<Booked, Id & { header: { 'Idempotency-Key': string } }, { clientId: number }>;
  };
  '/api/bookings/{id}': {
    delete: Route<{ bookingId: number; promoted: number; sessionId: number }, Id>;
  };
  '/api/bookings/{id}/check-in': { post: Route<never, Id>; delete: Route<never, Id> };
  '/api/moves': { get: Route<Move[], Plain> };
  '/api/moves/{id}/accept': { post: Route<{ moved: number }, Id> };
  '/api/moves/{id}/decline': { post: Route<never, Id, { reason: string }> };
  '/api/flags': { get: Route<Flag[], Plain> };
  '/api/flags/{id}/read': { post: Route<never, Id> };
  '/api/instructors': { get: Route<Instructor[], Plain> };
  '/api/instructors/{id}/qualifications': {
    post: Route<never, Id, { kind: string; issuedOn: string; expiresOn: string }>;
  };
  '/api/jobs': { get: Route<Job[], Plain> };
  '/api/jobs/{name}/run': { post: Route<JobRun, { path: { name: string } }> };
}
