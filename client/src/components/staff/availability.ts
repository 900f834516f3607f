import type { AvailableHours } from '@/api/staff';

/** Half hours drawn, from six in the morning to ten in the evening. */
export const firstSlot = 12;
export const lastSlot = 44;

export const clock = (slot: number) =>
  `${String(Math.floor(slot / 2)).padStart(2, '0')}:${slot % 2 === 0 ? '00' : '30'}`;

/** What each half hour of the week is given for: a location, or `any`; those not in it are not given. */
export type Drawn = ReadonlyMap<string, string>;

export const slotKey = (weekday: number, slot: number) => `${weekday} ${slot}`;

const slotAt = (time: string) => {
  const [hour = '0', minute = '0'] = time.split(':');
  return Number(hour) * 2 + Number(minute) / 30;
};

/** Hours as half hours of a week; null when they cannot be drawn so without loss. */
export function drawn(hours: readonly AvailableHours[]): Drawn | null {
  const slots = new Map<string, string>();
  for (const { weekday, from, to, locationId } of hours) {
    const [first, end] = [slotAt(from), slotAt(to)];
    if (!Number.isInteger(first) || !Number.isInteger(end) || first < firstSlot || end > lastSlot)
      return null;
    for (let slot = first; slot < end; slot++) {
      if (slots.has(slotKey(weekday, slot))) return null;
      slots.set(slotKey(weekday, slot), locationId == null ? 'any' : String(locationId));
    }
  }
  return slots;
}

/** The hours a drawing stands for: neighbours given for the same are one. */
export function hoursOf(slots: Drawn): AvailableHours[] {
  const hours: AvailableHours[] = [];
  for (let weekday = 1; weekday <= 7; weekday++)
    for (let slot = firstSlot; slot < lastSlot;) {
      const of = slots.get(slotKey(weekday, slot));
      let end = slot + 1;
      if (of !== undefined) {
        while (end < lastSlot && slots.get(slotKey(weekday, end)) === of) end++;
        hours.push({
          weekday,
          from: clock(slot),
          to: clock(end),
          locationId: of === 'any' ? null : Number(of),
        });
      }
      slot = end;
    }
  return hours;
}
