import { getRouteApi } from '@tanstack/react-router';
import { useMe } from '@/api/session';
import { ClientCardView } from '@/components/card/client-card';

const route = getRouteApi('/inside/desk/clients/$clientId');

export function CardPage() {
  const { today } = useMe();
  const clientId = Number(route.useParams().clientId);
  return (
    <ClientCardView key={clientId} clientId={clientId} today={today} at="/desk/clients/$clientId" />
  );
}
