// Her record: she reads it, takes it along and asks for its erasure; the owner carries it out; the desk finds nobody.
import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, signIn, test } from './studio.ts';

/** The next person sits down: nothing of the one before is left in the browser. */
const leave = async (page: Page) => {
  await page.evaluate(() => localStorage.clear());
  await page.goto('about:blank');
  await page.context().clearCookies();
};

test('a client takes her record along and is erased', async ({ page, watch }) => {
  test.slow();
  await page.setViewportSize({ width: 360, height: 760 });
  await signIn(page, demo.client);
  await page.goto('/my/details');
  await page.getByRole('link', { name: 'What is held about you' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'What is held about you' })).toBeVisible();
  await expect(page.getByRole('heading', { level: 2, name: 'Pregnancies and due dates' })).toBeVisible();
  await expect(page.getByRole('heading', { level: 2, name: 'Who looked at your record' })).toBeVisible();
  const who = page.getByRole('region', { name: 'Who you are' });
  const name = (await who.locator('dd').first().textContent())!;
  await fits(page);
  await isAccessible(page, 'her record');

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Download as a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('record-2027-03-03.json');
  const file = JSON.parse(await readFile(await download.path(), 'utf8'));
  expect(file.format).toBe('client-record/1');
  expect(file.clients[0].name).toBe(name);
  expect(file.dueDates.length).toBeGreaterThan(0);

  // She asks, takes it back, and asks again.
  const ask = page.getByRole('button', { name: 'Ask to be erased' });
  await ask.click();
  const dialog = page.getByRole('dialog', { name: 'Ask to be erased' });
  await expect(dialog.getByText('Kept for a time, set apart')).toBeVisible();
  await isAccessible(page, 'what an erasure would do');
  await fits(page);
  await dialog.getByRole('button', { name: 'Yes, ask for it' }).click();
  await page.getByRole('button', { name: 'Take it back' }).click();
  await ask.click();
  await dialog.getByRole('button', { name: 'Yes, ask for it' }).click();
  await expect(page.getByText(/^You asked on/)).toBeVisible();
  await isAccessible(page, 'her wish');

  // The owner sees it, reads what would be done, and carries it out.
  await leave(page);
  await page.setViewportSize({ width: 1280, height: 900 });
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Erasures' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Erasures' })).toBeVisible();
  await isAccessible(page, 'erasures, one asked for');
  await page.getByRole('link', { name }).click();
  await expect(page.getByRole('heading', { name: 'Erased at once' })).toBeVisible();
  await isAccessible(page, 'before erasing');
  const erase = page.getByRole('button', { name: 'Erase for good' });
  await page.getByLabel('Type her full name').fill('Somebody Else');
  await erase.click();
  await expect(page.getByText(/Nothing was erased: type her full name/)).toBeVisible();
  watch.errors.splice(0, watch.errors.length, ...watch.errors.filter((e) => !e.includes('status of 400')));
  await page.getByLabel('Type her full name').fill(name);
  await erase.click();
  await expect(page.getByRole('heading', { level: 1, name: 'Erasures' })).toBeVisible();
  const done = page.getByRole('region', { name: 'Carried out' });
  await expect(done.getByText(/kept until/).first()).toBeVisible();
  await expect(page.getByText(name)).toHaveCount(0);
  await fits(page);
  await isAccessible(page, 'erasures, one carried out');
  await done.getByRole('link', { name: 'Read what is set apart' }).click();
  await expect(page.getByText(name).first()).toBeVisible();
  await isAccessible(page, 'what is set apart');

  // The desk finds nobody, and she cannot sign in.
  await leave(page);
  await signIn(page, demo.desk);
  await page.keyboard.press('/');
  await page.keyboard.type(name);
  await expect(page.getByText('Nobody by that name, phone or e-mail.')).toBeVisible();
  const found = await page.request.get(`/api/clients?find=${encodeURIComponent(name)}`);
  expect(await found.json()).toEqual([]);
  const again = await page.request.post('/api/session', {
    data: { email: demo.client, password: demo.password },
  });
  expect(again.status()).toBe(401);
});
