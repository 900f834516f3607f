import { getRouteApi } from '@tanstack/react-router';
import { useMe } from '@/api/session';
import { WhatIfView } from '@/components/rules/what-if-view';

const route = getRouteApi('/inside/studio/rules/what-if');

export function WhatIfPage() {
  const { today } = useMe();
  const asking = route.useSearch();
  const navigate = route.useNavigate();
  return (
    <WhatIfView
      asking={asking}
      today={today}
      onAsk={(search) => void navigate({ search, replace: true })}
    />
  );
}
