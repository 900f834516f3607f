import type { RuleOutcome } from '@/api/types';
import { MovementShape } from '@/components/verdict/movement-shape';
import { SeverityShape, VerdictShape } from '@/components/verdict/shapes';
import { movementWords } from '@/components/verdict/words';
import classes from './rules.module.css';

export const outcomeWords: Record<RuleOutcome, string> = {
  note: 'Good to know',
  asTaught: movementWords.asTaught,
  adapted: movementWords.adapted,
  replaced: movementWords.replaced,
  leftOut: movementWords.leftOut,
  letter: 'Letter needed',
  notSuitable: 'Does not suit',
};

/** What a rule comes to: shape and word together. */
export const OutcomeMark = ({ outcome }: { outcome: RuleOutcome }) => (
  <span className={classes.outcome}>
    <Shape outcome={outcome} />
    <span>{outcomeWords[outcome]}</span>
  </span>
);

function Shape({ outcome }: { outcome: RuleOutcome }) {
  switch (outcome) {
    case 'note':
      return <SeverityShape severity="info" />;
    case 'letter':
      return <VerdictShape verdict="needsClearance" />;
    case 'notSuitable':
      return <VerdictShape verdict="notSuitable" />;
    case 'asTaught':
    case 'adapted':
    case 'replaced':
    case 'leftOut':
      return <MovementShape verdict={outcome} />;
  }
}
