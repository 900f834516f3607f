import { Title } from '@mantine/core';
import { effortWords, type Effort } from './effort';
import classes from './plans.module.css';

const width = 520;
const height = 190;
const left = 34;
const top = 12;
const bottom = 34;
const tall = height - top - bottom;

/** Effort of 10 over the minutes of the class; beyond its end the time runs out. */
export function EffortCurve({ curve, length }: { curve: readonly Effort[]; length: number }) {
  const end = Math.max(length, curve.at(-1)?.to ?? 0, 1);
  const x = (minute: number) => left + ((width - left - 8) * minute) / end;
  const y = (effort: number) => top + tall * (1 - effort / 10);
  const line = curve
    .map(({ from, to, effort }, at) => `${at === 0 ? 'M' : 'L'}${x(from)} ${y(effort)} H${x(to)}`)
    .join(' ');
  const step = end > 120 ? 30 : end > 60 ? 15 : 10;
  const ticks = Array.from({ length: Math.floor(end / step) + 1 }, (_, at) => at * step);
  return (
    <section aria-labelledby="effort">
      <Title order={2} id="effort" mb="xs">
        Effort over the class
      </Title>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        className={classes.curve}
        role="img"
        aria-label={`Effort over the class. ${effortWords(curve)}`}
      >
        {[0, 5, 10].map((effort) => (
          <g key={effort}>
            <line x1={left} x2={width - 8} y1={y(effort)} y2={y(effort)} className={classes.grid} />
            <text x={left - 6} y={y(effort) + 7} textAnchor="end">
              {effort}
            </text>
          </g>
        ))}
        {ticks.map((minute) => (
          <text key={minute} x={x(minute)} y={height - 10} textAnchor="middle">
            {minute}
          </text>
        ))}
        {line !== '' && (
          <>
            <path d={`${line} V${y(0)} H${x(0)} Z`} className={classes.under} />
            <path d={line} className={classes.line} />
          </>
        )}
        {end > length && (
          <line x1={x(length)} x2={x(length)} y1={top} y2={y(0)} className={classes.end} />
        )}
      </svg>
      <p className={classes.curveWords}>{effortWords(curve)}</p>
    </section>
  );
}
