import { Title } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { MovementsView } from '@/components/rules/movements-view';

const route = getRouteApi('/inside/teach/movements');

export function MovementsPage() {
  const filter = route.useSearch();
  const navigate = route.useNavigate();
  return (
    <>
      <Title mb="sm">Movements</Title>
      <MovementsView
        filter={filter}
        onFilter={(search) => void navigate({ search, replace: true })}
      />
    </>
  );
}
