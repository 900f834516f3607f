/** Stages are told apart by how their stretch of tape is woven, never by colour. */
const weaves: Record<string, { size: number; d: string }> = {
  'first-trimester': { size: 7, d: 'M3 3h1v1h-1z' },
  'second-trimester': { size: 8, d: 'M-1 9L9 -1M-2 2L2 -2M6 10L10 6' },
  'third-trimester': { size: 8, d: 'M-1 9L9 -1M-2 2L2 -2M6 10L10 6M-1 -1L9 9' },
  'early-recovery': { size: 5, d: 'M0 2.5H5' },
  postnatal: { size: 8, d: 'M-1 -1L9 9M-2 6L2 10M6 -2L10 2' },
  'later-postnatal': { size: 9, d: 'M4.5 0V9' },
};
const plain = { size: 12, d: 'M0 6H3' };

export function Weaves({ id, stages }: { id: string; stages: readonly string[] }) {
  return (
    <defs>
      {stages.map((stage) => {
        const { size, d } = weaves[stage] ?? plain;
        return (
          <pattern
            key={stage}
            id={weaveId(id, stage)}
            width={size}
            height={size}
            patternUnits="userSpaceOnUse"
          >
            <path d={d} stroke="var(--ink-soft)" strokeWidth="1" strokeOpacity="0.55" fill="none" />
          </pattern>
        );
      })}
    </defs>
  );
}

export const weaveId = (id: string, stage: string) => `${id}-${stage}`;
