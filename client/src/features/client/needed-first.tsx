import { Stack, Text, Title } from '@mantine/core';
import type { ClientCard, Released } from '@/api/types';
import { BirthForm } from '@/components/forms/birth-form';
import { GoButton } from '@/components/states/go';
import { longDay } from '@/components/time/days';
import classes from './my.module.css';

interface Props {
  her: ClientCard;
  today: string;
  onBirth: (released: Released) => void;
}

/** What the studio needs of her: before anything else, plainly. */
export function NeededFirst({ her, today, onBirth }: Props) {
  const asksOfBirth = her.pregnancy?.mayHaveGivenBirth === true && her.pregnancy.birthReportable;
  if (her.needs.length === 0 && !asksOfBirth) return null;
  return (
    <section
      className={classes.ask}
      aria-label={her.needs.length > 0 ? 'What we need from you' : 'The birth'}
    >
      <Stack gap="xs">
        {her.needs.map(({ code, says, by }) => (
          <div key={code}>
            <Text size="lg">
              {says}
              {by != null && ` By ${longDay(by)}.`}
            </Text>
            <WhereTo code={code} />
          </div>
        ))}
        {asksOfBirth && (
          <div role="group" aria-labelledby="birth">
            <Title order={2} id="birth" mb="xs">
              If you have given birth
            </Title>
            <BirthForm clientId={her.id} today={today} onDone={onBirth} />
          </div>
        )}
      </Stack>
    </section>
  );
}

/** The page on which she does what is asked. */
function WhereTo({ code }: { code: string }) {
  switch (code) {
    case 'screening':
      return (
        <GoButton to="/my/questions" mt={4}>
          Answer the questions
        </GoButton>
      );
    case 'letter':
    case 'hold':
      return (
        <GoButton to="/my/letters" mt={4} variant="default">
          My letters
        </GoButton>
      );
    case 'dates':
      return (
        <GoButton to="/my/details" mt={4} variant="default">
          Tell us your dates
        </GoButton>
      );
    default:
      return null;
  }
}
