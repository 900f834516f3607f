/** One key for one press. `crypto.randomUUID` is missing on a plain http address inside the studio's own network. */
export const newKey = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');

/** The same key for the same words sent again, and another for other words: a second press writes nothing twice. */
export function keyKeeper() {
  let kept: { words: string; key: string } | undefined;
  return (body: unknown) => {
    const words = JSON.stringify(body);
    if (kept?.words !== words) kept = { words, key: newKey() };
    return kept.key;
  };
}
