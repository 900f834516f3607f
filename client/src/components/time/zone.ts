const clockIn = (zone: string) =>
  new Intl.DateTimeFormat('en-GB', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' });

export const readersZone = () => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** Whether a clock on the reader's wall shows something else than one at the studio at that moment. */
export const clocksDiffer = (moment: string, zone: string, reader = readersZone()) => {
  const at = new Date(moment);
  return clockIn(zone).format(at) !== clockIn(reader).format(at);
};

/** `Europe/Lisbon` is `Lisbon time`. */
export const zoneName = (zone: string) =>
  `${(zone.split('/').at(-1) ?? zone).replaceAll('_', ' ')} time`;

/** A moment as date and time of day where it happened, whatever the reader's own clock says. */
export const momentAt = (moment: string, zone: string) =>
  new Intl.DateTimeFormat('en-GB', {
    dateStyle: 'medium',
    timeStyle: 'short',
    timeZone: zone,
  }).format(new Date(moment));

/** A moment as date and time of day on the reader's own clock: for logs, never for sessions. */
export const momentWords = (moment: string) =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' }).format(
    new Date(moment),
  );
