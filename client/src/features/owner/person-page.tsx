import { Button, Modal, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { clientQueries } from '@/api/clients';
import { useMe } from '@/api/session';
import { ClientCardView } from '@/components/card/client-card';
import { LossForm } from '@/components/card/loss-form';
import { FactorsForm } from '@/components/forms/factors-form';
import { NotesAbout } from '@/components/notes/notes-about';
import { Go } from '@/components/states/go';
import { WayBack } from './way-back';

const route = getRouteApi('/inside/studio/people/$clientId');

/** The desk's card, and with it what only the owner and she herself may see. */
export function PersonPage() {
  const { today } = useMe();
  const clientId = Number(route.useParams().clientId);
  return (
    <ClientCardView
      key={clientId}
      clientId={clientId}
      today={today}
      at="/studio/people/$clientId"
      health={<Health clientId={clientId} today={today} />}
    />
  );
}

function Health({ clientId, today }: { clientId: number; today: string }) {
  const { data: her } = useQuery(clientQueries.card(clientId));
  const [asking, setAsking] = useState(false);
  if (her === undefined) return null;
  const ending = her.phase === 'born' ? 'She has lost her baby' : 'Her pregnancy has ended';
  if (her.phase === 'ended') return <WayBack her={her} today={today} />;
  return (
    <section aria-labelledby="factors">
      <Title order={2} id="factors" mb="xs">
        What changes a class for her
      </Title>
      <FactorsForm clientId={clientId} factors={her.factors ?? []} today={today} />
      {(her.phase === 'pregnant' || her.phase === 'born') && (
        <Button variant="transparent" color="gray" px={0} mt="md" onClick={() => setAsking(true)}>
          {ending}
        </Button>
      )}
      <Text mt="md">
        <Go to="/studio/incidents" search={{ client: clientId }}>
          Warning signs and what was done
        </Go>
      </Text>
      <Text mt={4}>
        <Go to="/studio/audit" search={{ client: clientId }}>
          Who has seen and changed her record
        </Go>
      </Text>
      <Text mt="xs">
        <Go to="/studio/people/$clientId/record" params={{ clientId: String(clientId) }}>
          All that is held about her
        </Go>
      </Text>
      <Text mt="xs">
        <Go to="/studio/people/$clientId/erase" params={{ clientId: String(clientId) }}>
          Erase what is held about her
        </Go>
      </Text>
      <NotesAbout clientId={clientId} says="Notes after class" may="withdraw" />
      <Modal opened={asking} onClose={() => setAsking(false)} title={ending}>
        <LossForm clientId={clientId} onDone={() => setAsking(false)} />
      </Modal>
    </section>
  );
}
