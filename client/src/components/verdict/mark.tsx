import type { MovementVerdict, Severity, Verdict } from '@/api/types';
import { MovementShape } from './movement-shape';
import { SeverityShape, VerdictShape } from './shapes';
import { movementWords, severityWords, verdictWords } from './words';
import classes from './mark.module.css';

interface VerdictProps {
  verdict: Verdict;
  /** She holds a seat all the same: a person must look at it. */
  pressing?: boolean;
  children?: string;
}

/** A verdict: its shape and its word together, always. */
export function VerdictMark({ verdict, pressing = false, children }: VerdictProps) {
  return (
    <span className={classes.mark} data-tone={pressing ? 'stop' : toneOf[verdict]}>
      <VerdictShape verdict={verdict} />
      <span>{children ?? verdictWords[verdict]}</span>
    </span>
  );
}

const toneOf: Record<Verdict, string> = {
  suitable: 'act',
  withModifications: 'act',
  needsClearance: 'mind',
  notSuitable: 'quiet',
};

export function SeverityMark({ severity, children }: { severity: Severity; children?: string }) {
  return (
    <span className={classes.mark} data-tone={severityTone[severity]}>
      <SeverityShape severity={severity} />
      <span>{children ?? severityWords[severity]}</span>
    </span>
  );
}

const severityTone: Record<Severity, string> = { info: 'quiet', attention: 'mind', urgent: 'stop' };

/** What becomes of a movement for her: shape and word together. */
export const MovementMark = ({ verdict }: { verdict: MovementVerdict }) => (
  <span className={classes.mark} data-tone={verdict === 'asTaught' ? 'act' : 'mind'}>
    <MovementShape verdict={verdict} />
    <span>{movementWords[verdict]}</span>
  </span>
);

/** Something that needs a person, in words. */
export function Needs({ tone, children }: { tone: 'mind' | 'stop'; children: React.ReactNode }) {
  return (
    <span className={classes.needs} data-tone={tone}>
      <SeverityShape severity={tone === 'stop' ? 'urgent' : 'attention'} />
      <span>{children}</span>
    </span>
  );
}
