// A calendar on a phone: an address made, read by another library as a calendar program would, and taken back.
import { readFile } from 'node:fs/promises';
import ICAL from 'ical.js';
import type { Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, opensAt, signIn, test } from './studio.ts';

interface Session {
  id: number;
  className: string;
  zone: string;
  startsAt: string;
  endsAt: string;
  startsLocal: string;
  seatsTaken: number;
}

/** As a calendar program asks: no cookie, nobody signed in. */
const ask = (address: string, tag?: string) =>
  fetch(address, { headers: tag === undefined ? {} : { 'If-None-Match': tag } });

/** The entries as ical.js reads them, times by the calendar's own VTIMEZONE. */
function read(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const known = calendar.getAllSubcomponents('vtimezone').map((zone) => zone.getFirstPropertyValue('tzid'));
  return calendar.getAllSubcomponents('vevent').map((entry) => {
    const { startDate, endDate, summary, description, uid, sequence } = new ICAL.Event(entry);
    expect(known).toContain(entry.getFirstProperty('dtstart')!.getParameter('tzid'));
    return {
      summary,
      description,
      uid,
      sequence,
      status: entry.getFirstPropertyValue('status'),
      starts: startDate.toUnixTime() * 1000,
      ends: endDate.toUnixTime() * 1000,
      local: startDate.toString().slice(11, 16),
    };
  });
}

const makeAddress = async (page: Page) => {
  await page.getByRole('button', { name: 'Make an address' }).click();
  const field = page.getByRole('textbox', { name: 'Your calendar’s address' });
  await expect(field).toHaveValue(/\/feeds\/[\w-]{43}\.ics$/);
  return field.inputValue();
};

test('a client puts her classes in her calendar', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 760 });
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await signIn(page, demo.client);
  await page.getByRole('link', { name: 'Put them in your calendar' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'In your calendar' })).toBeVisible();
  await expect(page.getByText('Whoever has the address can read this calendar')).toBeVisible();
  await fits(page);
  await isAccessible(page, 'no address yet');
  const address = await makeAddress(page);
  await page.getByRole('button', { name: 'Copy it' }).click();
  await expect(page.getByRole('button', { name: 'Copied' })).toBeVisible();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(address);
  await fits(page);
  await isAccessible(page, 'an address just made');

  const me = await (await page.request.get('/api/session')).json();
  const bookings: { session: Session }[] = await (await page.request.get(`/api/clients/${me.clientId}/bookings`)).json();
  const answer = await ask(address);
  expect(answer.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
  const text = await answer.text();
  // What is over stays for a time; her list of bookings is of what is to come.
  const ahead = (written: string) => read(written).filter((e) => e.starts > Date.parse(opensAt));
  const entries = ahead(text);
  expect(entries.map((e) => [e.starts, e.ends]).sort()).toEqual(
    bookings.map(({ session: s }) => [Date.parse(s.startsAt), Date.parse(s.endsAt)]).sort(),
  );
  expect(new Set(entries.map((e) => e.summary))).toEqual(new Set([`Class at ${me.studioName}`]));
  for (const { session } of bookings) expect(text).not.toContain(session.className);
  expect((await ask(address, answer.headers.get('etag')!)).status).toBe(304);

  // She wants the names after all.
  await page.getByRole('switch', { name: 'Name the class' }).click();
  await expect
    .poll(async () => ahead(await (await ask(address)).text()).map((e) => e.summary).sort())
    .toEqual(bookings.map(({ session }) => session.className).sort());

  // One class as a file is the same entry.
  await page.goto('/my');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: /^Calendar file: / }).first().click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^class-2027-03-\d\d\.ics$/);
  const [file] = read(await readFile(await download.path(), 'utf8'));
  expect(entries.map((e) => e.uid)).toContain(file!.uid);
  expect(file!.summary).toBe(bookings[0]!.session.className);

  // Made anew, the first address is dead; taken back, so is the second.
  await page.getByRole('link', { name: 'Put them in your calendar' }).click();
  await expect(page.getByText(/^You have an address, made/)).toBeVisible();
  await page.getByRole('button', { name: 'Make a new one' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('stops working at once');
  await isAccessible(page, 'before a new address');
  await dialog.getByRole('button', { name: 'Yes, make a new one' }).click();
  const field = page.getByRole('textbox', { name: 'Your calendar’s address' });
  await expect(field).toBeVisible();
  const second = await field.inputValue();
  expect((await ask(address)).status).toBe(404);
  expect((await ask(second)).status).toBe(200);
  await page.getByRole('button', { name: 'Take it back' }).click();
  await dialog.getByRole('button', { name: 'Yes, take it back' }).click();
  await expect(page.getByRole('button', { name: 'Make an address' })).toBeVisible();
  expect((await ask(second)).status).toBe(404);
});

test('an instructor has her sessions in two zones, before and after the clocks change', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 760 });
  await signIn(page, demo.instructor);
  await page.getByRole('link', { name: 'My weeks' }).click();
  await page.getByRole('link', { name: 'Put them in your calendar' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'In your calendar' })).toBeVisible();
  await expect(page.getByRole('switch')).toHaveCount(0);
  const address = await makeAddress(page);
  await fits(page);
  await isAccessible(page, 'her address');

  const sessions: Session[] = await (
    await page.request.get('/api/sessions?mine=true&from=2027-02-10&to=2027-05-10')
  ).json();
  // Europe's clocks change on 28 March 2027 (Directive 2000/84/EC, the last Sunday of March).
  const change = Date.parse('2027-03-28T01:00:00Z');
  for (const zone of ['Europe/Lisbon', 'Europe/Madrid']) {
    const there = sessions.filter((s) => s.zone === zone).map((s) => Date.parse(s.startsAt));
    expect(there.some((at) => at < change), `${zone} before`).toBe(true);
    expect(there.some((at) => at > change), `${zone} after`).toBe(true);
  }
  const text = await (await ask(address)).text();
  const entries = read(text);
  const lines = (of: { starts: number; ends: number; local: string; what: string }[]) =>
    of.map((e) => `${new Date(e.starts).toISOString()} ${new Date(e.ends).toISOString()} ${e.local} ${e.what}`).sort();
  expect(lines(entries.map((e) => ({ ...e, what: `${e.summary} ${parseInt(e.description, 10)}` })))).toEqual(
    lines(
      sessions.map((s) => ({
        starts: Date.parse(s.startsAt),
        ends: Date.parse(s.endsAt),
        local: s.startsLocal,
        what: `${s.className} ${s.seatsTaken}`,
      })),
    ),
  );
  expect(new Set(entries.map((e) => e.uid)).size).toBe(sessions.length);
  expect(text).not.toContain('Leonor');

  await page.goto('/teach');
  const link = page.getByRole('link', { name: /^Calendar file: / });
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  const [file] = read(await readFile(await download.path(), 'utf8'));
  expect(entries.map((e) => e.uid)).toContain(file!.uid);
});
