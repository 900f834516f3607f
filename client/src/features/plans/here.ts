import { useRouterState } from '@tanstack/react-router';

/** The plans stand in two desks; links stay in the one they were opened from. */
export function useHere() {
  const studio = useRouterState({
    select: ({ location }) => location.pathname.startsWith('/studio'),
  });
  return studio
    ? ({ list: '/studio/plans', plan: '/studio/plans/$classId' } as const)
    : ({ list: '/teach/plans', plan: '/teach/plans/$classId' } as const);
}
