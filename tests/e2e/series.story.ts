// Series: the owner makes one, changes it and shuts a day; the desk rebooks whom a change let go.
import { writeFile } from 'node:fs/promises';
import { demo, expect, fits, isAccessible, picture, signIn, test } from './studio.ts';

test.use({ viewport: { width: 1280, height: 900 } });

test('the owner writes a rule, sees its dates with what stands against them, and makes the series', async ({ page }) => {
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Series', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Series' })).toBeVisible();
  await expect(page.getByText('Every Tuesday at 19:15').first()).toBeVisible();
  await isAccessible(page, 'series');
  await fits(page);
  await picture(page, 'series');

  await page.getByRole('link', { name: 'New series' }).click();
  await page.getByRole('combobox', { name: 'Class' }).click();
  await page.getByRole('option', { name: 'Mobility and breath' }).click();
  await page.getByRole('combobox', { name: 'Room' }).click();
  await page.getByRole('option', { name: /Cork room/ }).click();
  // Thursday is the first day that is offered; second-trimester core has the room on Tuesdays at 19:15.
  await page.getByRole('checkbox', { name: 'Tuesday' }).press(' ');
  await page.getByRole('checkbox', { name: 'Thursday' }).press(' ');
  await page.getByLabel('Starts').fill('19:30');
  await expect(page.getByText('Every Tuesday at 19:30')).toBeVisible();
  await expect(page.getByText(/Cork room would hold/).first()).toBeVisible();
  await isAccessible(page, 'a series that clashes');
  await page.getByLabel('Starts').fill('20:30');
  await page.getByLabel('Every how many weeks').fill('2');
  await page.getByRole('radio', { name: 'After a number of dates' }).check();
  await page.getByRole('textbox', { name: 'Number of dates' }).fill('6');
  await expect(page.getByText('Every second Tuesday at 20:30, 6 times')).toBeVisible();
  await expect(page.getByText(/Cork room would hold/)).toHaveCount(0);
  await fits(page);
  await page.getByRole('button', { name: 'Make the series' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Mobility and breath' })).toBeVisible();
  await expect(page.getByText('Every second Tuesday at 20:30, 6 times')).toBeVisible();
});

test('a change of a series shows what it means for people before it is kept', async ({ page }) => {
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Series', exact: true }).click();
  await page.getByRole('link', { name: 'Second-trimester core: Every Friday at 17:30' }).click();
  await page.getByRole('radio', { name: 'From a date on' }).check();
  await page.getByLabel('Starts').fill('17:45');
  await page.getByRole('button', { name: 'See what it changes' }).click();
  await expect(page.getByText(/people are told/).first()).toBeVisible();
  await isAccessible(page, 'what a change means');
  await fits(page);
  await picture(page, 'series-change');
  await page.getByRole('button', { name: 'Keep the change' }).click();
  await expect(page.getByText('Every Friday at 17:45').first()).toBeVisible();
});

test('a closure shows what falls on it; days are imported from a calendar', async ({ page }, info) => {
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Closures' }).click();
  await expect(page.getByText(/Day of the Estuary/)).toBeVisible();
  await isAccessible(page, 'closures');
  await fits(page);
  await page.getByRole('button', { name: 'Import holidays' }).click();
  const wrong = info.outputPath('wrong.csv');
  await writeFile(wrong, 'from,name\nsomeday,Never\n');
  await page.locator('input[type=file]').setInputFiles(wrong);
  await page.getByRole('button', { name: 'Try it without keeping' }).click();
  await expect(page.getByText(/Line 2, from/)).toBeVisible();
  const days = info.outputPath('days.ics');
  await writeFile(
    days,
    'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Quillmere//Days//EN\r\nBEGIN:VEVENT\r\nUID:1\r\nDTSTART;VALUE=DATE:20271101\r\nSUMMARY:Day of the Chestnut\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n',
  );
  await page.getByRole('combobox', { name: 'Location' }).click();
  await page.getByRole('option', { name: 'Vilarmeira' }).click();
  await page.locator('input[type=file]').setInputFiles(days);
  await page.getByRole('button', { name: 'Try it without keeping' }).click();
  await expect(page.getByText('1 to add, 0 there already')).toBeVisible();
  await isAccessible(page, 'import of holidays');
  await page.getByRole('button', { name: 'Add 1 days' }).click();
  await expect(page.getByText(/Day of the Chestnut/)).toBeVisible();
});

test('a session called off by hand puts those who had a seat on the desk’s list, and one press books them elsewhere', async ({
  page,
}) => {
  await signIn(page, demo.owner);
  const sessions = await (await page.request.get('/api/sessions?from=2027-03-04&to=2027-03-14')).json();
  const session = sessions.find(
    (s: { seatsTaken: number; classCode: string }) => s.seatsTaken > 2 && s.classCode === 'second-trimester-core',
  );
  await page.goto(`/studio/sessions/${session.id}`);
  await page.getByRole('checkbox', { name: 'It is held' }).uncheck();
  await page.getByRole('button', { name: 'See what it changes' }).click();
  await expect(page.getByText('1 session is called off.')).toBeVisible();
  await expect(page.getByText(/bookings are let go/)).toBeVisible();
  await isAccessible(page, 'calling off a session');
  await fits(page);
  await page.getByRole('button', { name: 'Keep the change' }).click();
  await expect(page.getByText('Called off', { exact: true })).toBeVisible();

  await page.goto('/desk/let-go');
  await expect(page.getByText('It was called off.').first()).toBeVisible();
  await isAccessible(page, 'to rebook');
  await fits(page);
  await picture(page, 'to-rebook');
  const before = (await (await page.request.get('/api/let-go')).json()).length;
  await page.getByRole('button', { name: /^Book / }).first().click();
  await expect.poll(async () => (await (await page.request.get('/api/let-go')).json()).length).toBe(before - 1);
  await page.setViewportSize({ width: 360, height: 800 });
  await fits(page);
});
