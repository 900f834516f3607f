import { Title } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useMe } from '@/api/session';
import { WhatIfView } from '@/components/rules/what-if-view';

const route = getRouteApi('/inside/teach/what-if');

export function WhatIfPage() {
  const { today } = useMe();
  const asking = route.useSearch();
  const navigate = route.useNavigate();
  return (
    <>
      <Title mb="sm">What if</Title>
      <WhatIfView
        asking={asking}
        today={today}
        onAsk={(search) => void navigate({ search, replace: true })}
      />
    </>
  );
}
