import { Button, Group, Modal, Title } from '@mantine/core';
import { useState } from 'react';
import { useMe } from '@/api/session';
import type { ClientCard } from '@/api/types';
import { BirthCorrection } from '@/components/forms/birth-correction';
import { BirthForm } from '@/components/forms/birth-form';
import { releasedWords } from '@/components/forms/birth-modes';
import { DetailsForm } from '@/components/forms/details-form';
import { ReviseDating } from '@/components/forms/revise-dating';
import { GoButton } from '@/components/states/go';
import { tell } from '@/components/states/told';
import { WarningForm } from '@/components/warning/warning-form';
import { DatingHistory } from './dating-history';
import { GiveAccount } from './give-account';
import { LetterForm } from './letter-form';

type Doing = 'letter' | 'dating' | 'birth' | 'correction' | 'details' | 'account' | 'hold';

const titles: Record<Doing, string> = {
  letter: 'File a clearance letter',
  dating: 'Revise her dating',
  birth: 'Report the birth',
  correction: 'Correct the birth',
  details: 'Change her details',
  account: 'Give her an account',
  hold: 'A warning sign',
};

/** What the desk can do for her, each in a sheet of its own. */
export function CardActions({ her, today }: { her: ClientCard; today: string }) {
  const [doing, setDoing] = useState<Doing | null>(null);
  const [title, setTitle] = useState('');
  const close = () => setDoing(null);
  const start = (what: Doing) => () => {
    setTitle(titles[what]);
    setDoing(what);
  };
  // Whoever chooses her first password could read her page: the owner may, the desk may not.
  const owner = useMe().roles.includes('owner');
  const given = { clientId: her.id, today, onDone: close };
  return (
    <section aria-labelledby="do">
      <Title order={2} id="do" mb="xs">
        Do for her
      </Title>
      <Group gap="xs">
        {her.phase !== 'ended' && (
          <Button variant="default" onClick={start('letter')}>
            File letter
          </Button>
        )}
        {her.phase !== 'ended' && (
          <GoButton
            variant="default"
            to="/desk/clients/$clientId/questions"
            params={{ clientId: String(her.id) }}
          >
            Health questions
          </GoButton>
        )}
        {her.phase !== 'ended' && (
          <Button variant="default" onClick={start('dating')}>
            Revise dating
          </Button>
        )}
        {her.pregnancy?.birthReportable === true && (
          <Button
            variant={her.pregnancy.mayHaveGivenBirth ? 'default' : 'subtle'}
            onClick={start('birth')}
          >
            Report birth
          </Button>
        )}
        {her.phase === 'born' && (
          <Button variant="default" onClick={start('correction')}>
            Correct the birth
          </Button>
        )}
        <Button variant="default" onClick={start('details')}>
          Details
        </Button>
        {owner && !her.hasAccount && (
          <Button variant="default" onClick={start('account')}>
            Give account
          </Button>
        )}
        {her.phase !== 'ended' && (
          <Button variant="default" onClick={start('hold')}>
            Warning sign
          </Button>
        )}
      </Group>
      <Modal opened={doing !== null} onClose={close} title={title}>
        {doing === 'letter' && <LetterForm clientId={her.id} onDone={close} />}
        {doing === 'dating' && (
          <>
            <ReviseDating {...given} />
            <DatingHistory clientId={her.id} />
          </>
        )}
        {doing === 'birth' && (
          <BirthForm
            {...given}
            onDone={(released) => {
              tell(
                released.preterm
                  ? `${releasedWords(released)} Please ring her: it stands among the flags.`
                  : releasedWords(released),
              );
              close();
            }}
          />
        )}
        {doing === 'correction' && <BirthCorrection her={her} today={today} onDone={close} />}
        {doing === 'details' && <DetailsForm her={her} onDone={close} />}
        {doing === 'account' && <GiveAccount her={her} onDone={close} />}
        {doing === 'hold' && <WarningForm clientId={her.id} called={her.called} onDone={close} />}
      </Modal>
    </section>
  );
}
