import { Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { letterQueries } from '@/api/letters';
import { LettersOf } from '@/components/letters/letters-of';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import classes from './letters.module.css';

const route = getRouteApi('/inside/letters/people/$clientId');

/** One client's letters, for somebody who reads letters and has no card of hers to look at. */
export function PersonPage() {
  const { clientId } = route.useParams();
  const { data } = useQuery(letterQueries.of(Number(clientId)));
  return (
    <div className={classes.person}>
      <Title mb="md">{data?.[0]?.name ?? 'Her letters'}</Title>
      <LettersOf
        key={clientId}
        clientId={Number(clientId)}
        request={
          <Go to="/letters/people/$clientId/letters/request" params={{ clientId }}>
            Letter to her clinician
          </Go>
        }
      />
      <SafetyNote />
    </div>
  );
}
