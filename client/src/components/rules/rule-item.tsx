import { Text } from '@mantine/core';
import type { Rule } from '@/api/types';
import { OutcomeMark } from './outcome-mark';
import { SourceLine } from './source-line';
import classes from './rules.module.css';

export function RuleItem({ rule }: { rule: Rule }) {
  return (
    <li className={classes.rule}>
      <div>
        <OutcomeMark outcome={rule.outcome} />
        <Text size="sm" c="dimmed" className={classes.id}>
          {rule.id}
        </Text>
      </div>
      <div>
        <Text fw={600}>{rule.speaks}</Text>
        <Text>{rule.when.length === 0 ? 'Always' : rule.when.join(' · ')}</Text>
        {!rule.counts && (
          <Text size="sm" c="dimmed">
            Does not count as the studio’s policies stand.
          </Text>
        )}
        <dl className={classes.words}>
          {rule.forInstructor !== '' && (
            <>
              <dt>On the mat</dt>
              <dd>{rule.forInstructor}</dd>
            </>
          )}
          <dt>For her</dt>
          <dd>{rule.forHer}</dd>
          {rule.lift != null && (
            <>
              <dt>Lifted</dt>
              <dd>{rule.lift}</dd>
            </>
          )}
        </dl>
      </div>
      <SourceLine source={rule.source} />
    </li>
  );
}
