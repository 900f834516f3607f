export interface Effort {
  from: number;
  to: number;
  effort: number;
  name: string;
}

interface Taught {
  minutes: number;
  effort: number;
  name: string;
}

/** Each movement with the minutes of the class it fills. */
export function effortOver(items: readonly Taught[]): Effort[] {
  let from = 0;
  return items.map(({ minutes, effort, name }) => {
    const stretch = { from, to: from + minutes, effort, name };
    from = stretch.to;
    return stretch;
  });
}

/** The curve in words, for those who do not see it. */
export function effortWords(curve: readonly Effort[]): string {
  const [first] = curve;
  const last = curve.at(-1);
  if (first === undefined || last === undefined) return 'No movement yet.';
  const top = curve.reduce((high, one) => (one.effort > high.effort ? one : high), first);
  return (
    `Begins at ${first.effort} of 10, is highest at minute ${top.from} with ${top.effort} ` +
    `(${top.name}) and ends at ${last.effort} after ${last.to} minutes.`
  );
}

/** How the time planned compares with the time there is. */
export function timeWords(planned: number, length: number) {
  const over = planned - length;
  if (over > 0) return { state: 'over', words: `${minutes(over)} too long` } as const;
  if (over < 0) return { state: 'under', words: `${minutes(-over)} still free` } as const;
  return { state: 'full', words: 'fills the class' } as const;
}

const minutes = (count: number) => (count === 1 ? '1 minute' : `${count} minutes`);
