// Short names for what is on the wire; the server's document says what each means.
import type { components } from './schema';

type Wire = components['schemas'];

export type BirthMode = NonNullable<Wire['BirthMode']>;
export type Released = Wire['Released'];
export type BroughtBack = Wire['BroughtBack'];
export type WayBack = Wire['WayBackRequest'];
export type Basis = Wire['DatingBasis'];
export type Role = Wire['Role'];
export type Severity = Wire['FlagSeverity'];
export type Verdict = Wire['Suits'];

export type Answer = Wire['AnswerMessage'];
export type AskedQuestion = Wire['QuestionMessage'];
export type QuestionSection = Wire['QuestionSection'];
export type ScreeningAnswer = Wire['ScreeningAnswer'];
export type ScreeningForm = Wire['ScreeningForm'];
export type Letter = Wire['LetterMessage'];
export type AuditEntry = Wire['AuditMessage'];

export type MessageKind = Wire['MessageKind'];
export type MessageStatus = Wire['MessageStatus'];
export type LoggedMessage = Wire['LoggedMessage'];
export type MessageInFull = Wire['MessageInFull'];
export type Sending = Wire['SendingMessage'];
export type MessageCounts = Wire['MessageCounts'];
export type KindOfMessage = Wire['KindMessage'];
export type MyMessage = Wire['MyMessage'];
export type MessageChoice = Wire['MessageChoice'];
export type Feed = Wire['FeedMessage'];
export type FeedReads = Wire['FeedReads'];

export type Me = Wire['Me'];
export type Demo = Wire['DemoMessage'];

export type Cover = Wire['CoverMessage'];
export type CoverAnswer = Wire['CoverAnswer'];
export type CoverAsked = Wire['CoverAskedMessage'];
export type CoverChoice = Wire['CoverChoice'];
export type CoverPlan = Wire['CoverPlanMessage'];
export type CoverStep = Wire['CoverStepMessage'];
export type Candidate = Wire['CandidateMessage'];
export type MyCover = Wire['MyCoverMessage'];

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
export type Movement = Wire['MovementMessage'];
export type PlanItem = Wire['PlanItemMessage'];
export type PlanVersion = Wire['PlanVersionMessage'];
export type ClassPlan = Wire['ClassPlanMessage'];
export type SessionPlan = Wire['SessionPlanMessage'];
export type PlanPreview = Wire['PlanPreview'];
export type PreviewedItem = Wire['PreviewedItem'];
export type PreviewedPerson = Wire['PreviewedPerson'];
export type ProposedPlan = Wire['ProposedPlan'];
export type StudioClass = Wire['StudioClass'];
export type Flag = Wire['FlagMessage'];
export type ClassNote = Wire['ClassNote'];
export type SessionNotes = Wire['SessionNotes'];
export type ChoiceInFull = Wire['ChoiceInFull'];
export type Change = Wire['ChangeMessage'];
export type ChangedMovement = Wire['ChangedMovementMessage'];
export type Move = Wire['MoveMessage'];

export type Series = Wire['SeriesMessage'];
export type SeriesDate = Wire['SeriesDateMessage'];
export type SeriesRequest = Wire['SeriesRequest'];
export type SeriesChange = Wire['SeriesChangeRequest'];
export type SessionRequest = Wire['SessionRequest'];
export type ChangesPreview = Wire['ChangesPreview'];
export type Closure = Wire['ClosureRow'];
export type ClosureRequest = Wire['ClosureRequest'];
export type HolidayReport = Wire['HolidayReport'];
export type LetGo = Wire['LetGoMessage'];

export type LetterReview = Wire['LetterReview'];
export type LetterTerms = Wire['LetterTermsMessage'];
export type Trait = Wire['TraitChoice'];
export type RequestLetter = Wire['RequestLetter'];
export type AuditCheck = Wire['AuditCheck'];

export type WarningSaid = Wire['WarningRequest'];
export type StopAndRefer = Wire['StopAndRefer'];
export type WarningSign = Wire['WarningSignMessage'];
export type DoorAnswer = Wire['DoorAnswer'];
export type Incident = Wire['IncidentMessage'];
export type LetterPerson = Wire['LetterPerson'];

export type ClientCard = Wire['ClientCard'];
export type ClientFound = Wire['ClientFound'];
export type Contact = Omit<Wire['ContactChange'], 'bornOn' | 'forgetBornOn'> &
  Partial<Pick<Wire['ContactChange'], 'bornOn' | 'forgetBornOn'>>;
export type Evidence = Wire['EvidenceRequest'];
export type EvidenceGiven = Wire['EvidenceMessage'];
export type HeldFactor = Wire['FactorMessage'];
export type NewClient = Wire['NewClient'];
export type TapeData = Wire['Tape'];

export type Draft = Wire['DraftMessage'];
export type DraftSummary = Wire['DraftSummary'];
export type DraftSession = Wire['DraftSessionMessage'];
export type TimetableConflict = Wire['ConflictMessage'];
export type ConflictKind = Wire['ConflictKind'];

export type Account = Wire['AccountRow'];
export type ImportReport = Wire['ImportReport'];
export type Instructor = Wire['InstructorMessage'];
export type InstructorPage = Wire['InstructorPage'];
export type Job = Wire['JobMessage'];
export type JobRun = Wire['JobRun'];
export type Location = Wire['Location'];
export type NewAccount = Wire['NewAccount'];
export type Policy = Wire['PolicyMessage'];
export type PolicyChange = Wire['PolicyChange'];
export type PolicyPreview = Wire['PolicyPreview'];
export type Rule = Wire['RuleMessage'];
export type RuleOutcome = Wire['RuleOutcome'];
export type RuleSource = Wire['SourceInUse'];
export type CatalogueMovement = Wire['CatalogueMovement'];
export type CatalogueFile = Wire['CatalogueFile'];
export type CatalogueReport = Wire['CatalogueReport'];
export type CatalogueVersion = Wire['VersionMessage'];
export type Consequences = Wire['Consequences'];
export type ChangedBooking = Wire['ChangedBooking'];
export type Factor = Wire['FactorChoice'];
export type Question = Wire['WhatIfRequest'];
export type WhatIf = Wire['WhatIfAnswer'];
export type Stage = Wire['StageMessage'];

export type HeldRecord = Wire['HeldRecord'];
export type ErasurePlan = Wire['ErasurePlan'];
export type ErasureConfirmed = Wire['ErasureConfirmed'];
export type ErasureList = Wire['ErasureList'];

/** RFC 9457, with our stable `code` and, for a form, messages by field. */
export type ProblemDetails = Partial<Wire['ProblemDetails']> & {
  code?: string;
  errors?: Record<string, string[]>;
};

export type AssignmentAsked = Wire['AssignmentRequest'];
export type AssignmentScope = Wire['AssignmentScope'];
export type AssignmentRun = Wire['AssignmentSummary'];
export type AssignmentProgress = Wire['AssignmentProgress'];
export type AssignmentResult = Wire['AssignmentResult'];
export type AssignmentChange = Wire['AssignmentChange'];
export type AssignmentGap = Wire['AssignmentGap'];
export type AssignedSession = Wire['AssignedSession'];
export type TermAim = Wire['TermAim'];
export type TermLoad = Wire['TermLoad'];
