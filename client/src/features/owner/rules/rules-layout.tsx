import { Title } from '@mantine/core';
import { Outlet } from '@tanstack/react-router';
import { Go } from '@/components/states/go';
import classes from './owner-rules.module.css';

const pages = [
  { to: '/studio/rules', label: 'Rules' },
  { to: '/studio/rules/movements', label: 'Movements' },
  { to: '/studio/rules/what-if', label: 'What if' },
  { to: '/studio/rules/policies', label: 'Policies' },
  { to: '/studio/rules/sources', label: 'Sources' },
  { to: '/studio/rules/import', label: 'Change by file' },
] as const;

/** Everything the verdicts rest on, in one place. */
export const RulesLayout = () => (
  <>
    <Title mb="xs">Rules</Title>
    <nav aria-label="Rules" className={classes.pages}>
      {pages.map(({ to, label }) => (
        <Go
          key={to}
          to={to}
          underline="never"
          activeOptions={{ exact: true, includeSearch: false }}
          activeProps={{ 'aria-current': 'page' }}
        >
          {label}
        </Go>
      ))}
    </nav>
    <Outlet />
  </>
);
