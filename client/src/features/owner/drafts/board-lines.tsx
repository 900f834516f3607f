import { UnstyledButton } from '@mantine/core';
import { shortDay } from '@/components/time/days';
import { clockOf, step, type Ground, type Line, type Spot } from './place';
import classes from './board.module.css';

export const pixelsPerHour = 40;

/** Hour, class, and who or where. */
export const leastHeight = 48;

export const lineHeight = ({ from, to }: { from: number; to: number }) =>
  ((to - from) / 60) * pixelsPerHour + 6;

interface Props {
  lines: readonly Line[];
  hours: { from: number; to: number };
  days: readonly string[];
  ground: Ground;
  add: (spot: Pick<Spot, 'on' | 'startsLocal'>, line: Line) => void;
}

/** What lies under the sessions: names, hours, and the free time of each day, which adds a session where it is pressed. */
export const Lines = ({ lines, hours, days, ground, add }: Props) => (
  <div className={classes.lines}>
    {lines.map((line) => (
      <div key={line.key} className={classes.line} style={{ height: lineHeight(hours) }}>
        <div className={classes.label}>
          <strong>{line.name}</strong>
          {line.under !== '' && <span>{line.under}</span>}
          <div className={classes.hours} aria-hidden="true">
            {wholeHours(hours).map((hour) => (
              <span key={hour} style={{ top: ((hour - hours.from) / 60) * pixelsPerHour }}>
                {clockOf(hour)}
              </span>
            ))}
          </div>
        </div>
        {days.map((day) => {
          const outside = day < ground.first || day > ground.last;
          return (
            <UnstyledButton
              key={day}
              className={classes.cell}
              tabIndex={-1}
              disabled={outside}
              data-outside={outside || undefined}
              style={{ backgroundSize: `100% ${pixelsPerHour}px` }}
              aria-label={`Add a session: ${line.name}, ${shortDay(day)}`}
              onClick={(event) => {
                const { top } = event.currentTarget.getBoundingClientRect();
                const at = hours.from + ((event.clientY - top) / pixelsPerHour) * 60;
                add({ on: day, startsLocal: clockOf(Math.floor(at / step) * step) }, line);
              }}
            />
          );
        })}
      </div>
    ))}
  </div>
);

const wholeHours = ({ from, to }: { from: number; to: number }) =>
  Array.from({ length: (to - from) / 60 }, (_, hour) => from + hour * 60).filter(
    (hour) => (hour / 60) % 2 === 0 && hour > from + 60,
  );
