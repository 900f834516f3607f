// Short names for what is on the wire; the server's document says what each means.
import type { components } from './schema';

type Wire = components['schemas'];

export type BirthMode = NonNullable<Wire['BirthMode']>;
export type Basis = Wire['DatingBasis'];
export type Role = Wire['Role'];
export type ScreeningOutcome = Wire['ScreeningOutcome'];
export type Severity = Wire['FlagSeverity'];
export type Verdict = Wire['Suits'];

export type Me = Wire['Me'];
export type Demo = Wire['DemoMessage'];

export type SessionSummary = Wire['SessionSummary'];
export type Fit = Wire['FitMessage'];
export type Reason = Wire['ReasonMessage'];
export type Choice = Wire['Choice'];
export type ClientBooking = Wire['ClientBooking'];
export type Roster = Wire['RosterMessage'];
export type Person = Wire['PersonMessage'];
export type Planned = Wire['PlannedMovementMessage'];
export type HerMovement = Wire['HerMovementMessage'];
export type MovementVerdict = Wire['MovementVerdict'];
export type PlanShare = Wire['PlanShareMessage'];
export type Flag = Wire['FlagMessage'];
export type Move = Wire['MoveMessage'];

export type ClientCard = Wire['ClientCard'];
export type ClientFound = Wire['ClientFound'];
export type Contact = Omit<Wire['ContactChange'], 'bornOn' | 'forgetBornOn'> &
  Partial<Pick<Wire['ContactChange'], 'bornOn' | 'forgetBornOn'>>;
export type Evidence = Wire['EvidenceRequest'];
export type EvidenceGiven = Wire['EvidenceMessage'];
export type HeldFactor = Wire['FactorMessage'];
export type NewClient = Wire['NewClient'];
export type TapeData = Wire['Tape'];

export type Account = Wire['AccountRow'];
export type ImportReport = Wire['ImportReport'];
export type Instructor = Wire['InstructorMessage'];
export type Job = Wire['JobMessage'];
export type JobRun = Wire['JobRun'];
export type Location = Wire['Location'];
export type NewAccount = Wire['NewAccount'];
export type Policy = Wire['PolicyMessage'];
export type Stage = Wire['StageMessage'];

/** RFC 9457, with our stable `code` and, for a form, messages by field. */
export type ProblemDetails = Partial<Wire['ProblemDetails']> & {
  code?: string;
  errors?: Record<string, string[]>;
};
