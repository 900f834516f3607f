import type { Severity, Verdict } from '@/api/types';

// Drawn in a 16 by 16 box around its middle, so that the same shapes serve beside words and on the
// tape. Each has an outline of its own: a pebble; a pebble cut and shifted; a sheet; a barred lozenge.

export function VerdictPath({ verdict }: { verdict: Verdict }) {
  switch (verdict) {
    case 'suitable':
      return <circle cx="8" cy="8" r="6.5" fill="currentColor" />;
    case 'withModifications':
      return (
        <path
          d="M0.5 7.2 A6 6 0 0 1 12.5 7.2 Z M3.5 8.8 A6 6 0 0 0 15.5 8.8 Z"
          fill="currentColor"
        />
      );
    case 'needsClearance':
      return (
        <path
          d="M3 1.5 H9.5 L13 5 V14.5 H3 Z M9.5 1.5 V5 H13 M5.5 8 H10.5 M5.5 11 H10.5"
          fill="var(--shape-inside, none)"
          stroke="currentColor"
          strokeWidth="1.6"
          strokeLinejoin="round"
        />
      );
    case 'notSuitable':
      return (
        <path
          d="M8 1.2 L14.8 8 L8 14.8 L1.2 8 Z M4.6 8 H11.4"
          fill="var(--shape-inside, none)"
          stroke="currentColor"
          strokeWidth="1.8"
          strokeLinejoin="round"
        />
      );
  }
}

/** Pennants: the more it matters, the more of it is filled. */
function SeverityPath({ severity }: { severity: Severity }) {
  const pole = <path d="M3 1 V15" stroke="currentColor" strokeWidth="2" />;
  switch (severity) {
    case 'info':
      return (
        <>
          {pole}
          <path d="M3 3.5 H9" stroke="currentColor" strokeWidth="2" />
        </>
      );
    case 'attention':
      return (
        <>
          {pole}
          <path d="M3 2 L13 5.5 L3 9 Z" fill="none" stroke="currentColor" strokeWidth="1.8" />
        </>
      );
    case 'urgent':
      return (
        <>
          {pole}
          <path d="M3 1 L15 6 L3 11 Z" fill="currentColor" />
        </>
      );
  }
}

export const VerdictShape = ({ verdict, size = '0.9em' }: { verdict: Verdict; size?: string }) => (
  <svg viewBox="0 0 16 16" width={size} height={size} aria-hidden="true" focusable="false">
    <VerdictPath verdict={verdict} />
  </svg>
);

export const SeverityShape = ({
  severity,
  size = '0.9em',
}: {
  severity: Severity;
  size?: string;
}) => (
  <svg viewBox="0 0 16 16" width={size} height={size} aria-hidden="true" focusable="false">
    <SeverityPath severity={severity} />
  </svg>
);
