import { getRouteApi } from '@tanstack/react-router';
import { MovementsView } from '@/components/rules/movements-view';

const route = getRouteApi('/inside/studio/rules/movements');

export function MovementsPage() {
  const filter = route.useSearch();
  const navigate = route.useNavigate();
  return (
    <MovementsView
      filter={filter}
      onFilter={(search) => void navigate({ search, replace: true })}
    />
  );
}
