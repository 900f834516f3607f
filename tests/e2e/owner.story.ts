// The owner: the week, staff, jobs, import.
import { readFile, writeFile } from 'node:fs/promises';
import { demo, expect, fits, isAccessible, picture, signIn, test } from './studio.ts';

test.use({ viewport: { width: 1280, height: 900 } });

test('the week by room, with what needs a person', async ({ page }) => {
  await signIn(page, demo.owner);
  await expect(page).toHaveURL(/\/studio/);
  await expect(page.getByText(/no instructor/i).first()).toBeVisible();
  await isAccessible(page, 'the week');
  await fits(page);
  await picture(page, 'owner');
});

test('staff and what runs out', async ({ page }) => {
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Staff' }).click();
  await expect(page.getByText('Marisol Quintavelle').first()).toBeVisible();
  await expect(page.getByText(/expired|ended/i).first()).toBeVisible();
  await isAccessible(page, 'staff');
  await fits(page);
});

test('the nightly jobs: when they ran, and by hand', async ({ page }) => {
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Jobs' }).click();
  await expect(page.getByText(/Last ran/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Run now: Suggest moves' }).click();
  await expect(page.getByText(/Suggest moves: /)).toBeVisible();
  await isAccessible(page, 'jobs');
});

test('imports clients: a dry run tells what is wrong, then the file goes in', async ({ page }, info) => {
  await signIn(page, demo.owner);
  const example = await page.request.get('/api/imports/clients/example');
  const good = info.outputPath('clients.csv');
  await writeFile(good, await example.text());
  const bad = info.outputPath('bad.csv');
  await writeFile(bad, (await readFile(good, 'utf8')).replace('9w2d', 'nine weeks'));

  await page.getByRole('link', { name: 'Import' }).click();
  await page.locator('input[type=file]').setInputFiles(bad);
  await page.getByRole('button', { name: 'Try it without keeping' }).click();
  await expect(page.getByText('scan_age')).toBeVisible();
  await expect(page.getByText(/is not an age such as 8w1d/)).toBeVisible();
  await isAccessible(page, 'refused rows');

  await page.locator('input[type=file]').setInputFiles(good);
  await page.getByRole('button', { name: 'Try it without keeping' }).click();
  await page.getByRole('button', { name: 'Import 4 clients' }).click();
  await expect(page.getByText(/4 clients/).first()).toBeVisible();
  await page.getByRole('link', { name: 'People' }).click();
  await page.keyboard.press('/');
  await page.keyboard.type('Brunhild');
  await expect(page.getByRole('option', { name: /Brunhild Eskaloria/ })).toBeVisible();
});

test('two desks see a booking at once', async ({ browser, page, studio }) => {
  await signIn(page, demo.desk);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const other = await browser.newPage({ baseURL: studio.url });
  await signIn(other, demo.owner);
  await other.waitForURL(/\/studio/);
  const sessions = await (await page.request.get('/api/sessions?from=2027-03-03&to=2027-03-03')).json();
  const found = await (await page.request.get('/api/clients?find=a')).json();
  for (const client of found) {
    const choices = await (await page.request.get(`/api/clients/${client.id}/sessions?from=2027-03-03&to=2027-03-03`)).json();
    const choice = choices.find((c: { canBook: string }) => c.canBook === 'seat');
    if (!choice) continue;
    const before = sessions.find((s: { id: number }) => s.id === choice.session.id);
    const words = `${before.seatsTaken + 1} of ${before.seats}`;
    const booked = await other.request.post(`/api/sessions/${choice.session.id}/bookings`, { data: { clientId: client.id } });
    expect(booked.status()).toBe(201);
    await expect(page.getByText(words).first()).toBeVisible();
    break;
  }
  await other.close();
});
