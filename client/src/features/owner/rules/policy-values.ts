/** What may be chosen, as `none|1..365` says it. */
export interface PolicyValues {
  words: string[];
  /** A number from and to, both included. */
  range?: { from: number; to: number };
}

export const valuesOf = (allowed: string): PolicyValues => {
  const values: PolicyValues = { words: [] };
  for (const part of allowed.split('|')) {
    const ends = /^(\d+)\.\.(\d+)$/.exec(part);
    if (ends) values.range = { from: Number(ends[1]), to: Number(ends[2]) };
    else values.words.push(part);
  }
  return values;
};

/** `supine-from` is `supine from`. */
export const nameOf = (code: string) => code.replaceAll('-', ' ');
