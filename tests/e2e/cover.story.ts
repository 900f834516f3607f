// Cover: an instructor cannot teach, a colleague takes it, the desk rings, the owner solves a week.
import { demo, expect, fits, isAccessible, signIn, test } from './studio.ts';

const phone = { width: 360, height: 780 };
const wide = { width: 1280, height: 900 };

test('an instructor asks, and the owner gives it to a colleague', async ({ browser, studio }) => {
  const at = { baseURL: studio.url };
  const owner = await (await browser.newContext({ ...at, viewport: wide })).newPage();
  await signIn(owner, demo.owner);
  const hers = await (await browser.newContext({ ...at, viewport: phone })).newPage();
  await signIn(hers, demo.instructor);

  // She is asked as well: a colleague cannot teach.
  await hers.goto('/teach/cover');
  await expect(hers.getByRole('heading', { level: 1, name: 'Cover' })).toBeVisible();
  await expect(hers.getByText(/cannot teach it/).first()).toBeVisible();
  await isAccessible(hers, 'an instructor’s cover');
  await fits(hers);

  await hers.goto('/teach');
  const session = await hers.getByRole('heading', { level: 1 }).innerText();
  await hers.getByRole('button', { name: 'I can’t take this one' }).click();
  await hers.getByRole('button', { name: 'Ask for cover' }).click();
  await expect(hers.getByText('Cover is asked')).toBeVisible();
  await fits(hers);

  await owner.goto('/studio/cover');
  await expect(owner.getByRole('heading', { level: 2, name: session }).first()).toBeVisible();
  await isAccessible(owner, 'the owner’s cover');
  await fits(owner);
  await owner
    .getByRole('button', { name: new RegExp(`(Give it to|give it to) .*: ${session}`) })
    .first()
    .click();
  await expect(owner.getByText(/Everybody is told/)).toBeVisible();
  await hers.goto('/teach/cover');
  await expect(hers.getByText('Nothing is open.', { exact: false })).toBeVisible();
});

test('the desk sees first what nobody teaches within a day, and whom to ring', async ({ page, browser, studio }) => {
  const hers = await (await browser.newContext({ baseURL: studio.url, viewport: phone })).newPage();
  await signIn(hers, demo.instructor);
  await hers.goto('/teach');
  await hers.getByRole('button', { name: 'I can’t take this one' }).click();
  await hers.getByRole('button', { name: 'Ask for cover' }).click();
  await expect(hers.getByText('Cover is asked')).toBeVisible();

  await page.setViewportSize(wide);
  await signIn(page, demo.desk);
  const loud = page.getByRole('alert').filter({ hasText: 'begin' });
  await expect(loud).toContainText('Marisol Quintavelle cannot teach it');
  await expect(loud.getByRole('link', { name: /^\+/ }).first()).toBeVisible();
  await isAccessible(page, 'the desk with a class that nobody teaches');
  await fits(page);
});

test('the owner solves a sick week together', async ({ page }) => {
  await page.setViewportSize(wide);
  await signIn(page, demo.owner);
  await page.request.post('/api/cover/away', {
    data: {
      from: '2027-03-04',
      to: '2027-03-10',
      instructorId: ((await (await page.request.get('/api/instructors')).json()) as { id: number; name: string }[]).find(
        ({ name }) => name.startsWith('Saskia'),
      )!.id,
    },
  });
  await page.goto('/studio/cover');
  await page.getByRole('button', { name: /^Work out \d+ together$/ }).click();
  await expect(page.getByRole('heading', { name: /^Proposal: \d+ of \d+ covered$/ })).toBeVisible();
  await isAccessible(page, 'a proposal');
  await fits(page);
  await page.getByRole('button', { name: /settle all$/i }).click();
  await expect(page.getByText(/sessions? (have|has) somebody\. Everybody is told/)).toBeVisible();
});
