import { Title } from '@mantine/core';
import type { ClientCard } from '@/api/types';
import { fullDate, sinceBirth } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import classes from './card.module.css';

/** Where she stands: letter, screening, dates. Only what the reader was given. */
export function Standing({ her }: { her: ClientCard }) {
  const { clearance, screening, pregnancy } = her;
  const letterShort = clearance.status === 'expired' || clearance.status === 'endsSoon';
  return (
    <section aria-labelledby="standing">
      <Title order={2} id="standing">
        Where she stands
      </Title>
      <dl className={classes.facts}>
        <dt>Letter</dt>
        <dd>{letterShort ? <Needs tone="mind">{clearance.says}</Needs> : clearance.says}</dd>
        <dt>Screening</dt>
        <dd>
          {screening.status === 'due' ? (
            <Needs tone="mind">{screening.says}</Needs>
          ) : (
            screening.says
          )}
        </dd>
        {her.onHold && (
          <>
            <dt>Hold</dt>
            <dd>
              <Needs tone="stop">On hold: no bookings until a new letter is filed.</Needs>
            </dd>
          </>
        )}
        {pregnancy?.bornOn != null ? (
          <>
            <dt>Birth</dt>
            <dd>
              {fullDate(pregnancy.bornOn)}
              {pregnancy.daysSinceBirth != null && `, ${sinceBirth(pregnancy.daysSinceBirth)} ago`}
            </dd>
          </>
        ) : (
          pregnancy?.dueDate != null && (
            <>
              <dt>Due</dt>
              <dd>
                {fullDate(pregnancy.dueDate)}
                {pregnancy.pastDue && ' '}
                {pregnancy.pastDue && <Needs tone="mind">passed, no word yet</Needs>}
              </dd>
            </>
          )
        )}
        {pregnancy?.explanation != null && pregnancy.bornOn == null && (
          <>
            <dt>Why then</dt>
            <dd>{pregnancy.explanation}</dd>
          </>
        )}
      </dl>
    </section>
  );
}
