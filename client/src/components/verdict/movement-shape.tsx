import type { MovementVerdict } from '@/api/types';

// In the same 16 by 16 box as the verdicts: a pebble; one cut and shifted; one stepping aside for
// another; an empty ring.

function MovementPath({ verdict }: { verdict: MovementVerdict }) {
  switch (verdict) {
    case 'asTaught':
      return <circle cx="8" cy="8" r="6.5" fill="currentColor" />;
    case 'adapted':
      return (
        <path
          d="M0.5 7.2 A6 6 0 0 1 12.5 7.2 Z M3.5 8.8 A6 6 0 0 0 15.5 8.8 Z"
          fill="currentColor"
        />
      );
    case 'replaced':
      return (
        <path
          d="M1 5 H13 M9.5 1.5 L13 5 L9.5 8.5 M15 11.5 H3 M6.5 8 L3 11.5 L6.5 15"
          fill="none"
          stroke="currentColor"
          strokeWidth="2"
        />
      );
    case 'leftOut':
      return <circle cx="8" cy="8" r="6" fill="none" stroke="currentColor" strokeWidth="2.4" />;
  }
}

export const MovementShape = ({ verdict }: { verdict: MovementVerdict }) => (
  <svg viewBox="0 0 16 16" width="0.9em" height="0.9em" aria-hidden="true" focusable="false">
    <MovementPath verdict={verdict} />
  </svg>
);
