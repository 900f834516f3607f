// The client, on her phone.
import { demo, expect, fits, isAccessible, picture, signIn, test } from './studio.ts';

test.use({ viewport: { width: 360, height: 740 }, hasTouch: true });

test('sees her tape, her next class and what suits her', async ({ page }) => {
  await signIn(page, demo.client);
  await expect(page).toHaveURL(/\/my/);
  await expect(page.getByRole('heading', { level: 1, name: 'Leonor' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Your next class' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Classes that suit you' })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Book:/ }).first()).toBeVisible();
  await isAccessible(page, 'a client’s page');
  await fits(page);
  await picture(page, 'client');
});

test('books a class and gives it up again, with undo', async ({ page }) => {
  await signIn(page, demo.client);
  const book = page.getByRole('button', { name: /^Book:/ }).first();
  const which = (await book.getAttribute('aria-label'))!.replace('Book: ', '');
  await book.click();
  await expect(page.getByText(`Booked: ${which}.`)).toBeVisible();
  await page.getByRole('button', { name: `Cancel: ${which}` }).click();
  await expect(page.getByText(`Cancelled: ${which}.`)).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText(`Booked again: ${which}.`)).toBeVisible();
});

test('sees why a class does not suit and what would change it', async ({ page }) => {
  await signIn(page, demo.client);
  await page.getByRole('button', { name: /classes you cannot book now, and what would change it/ }).click();
  await expect(page.getByText(/your stage is/).first()).toBeVisible();
  await isAccessible(page, 'what does not suit');
  await fits(page);
});

test('keeps her own details, dates and factors', async ({ page }) => {
  await signIn(page, demo.client);
  await page.getByRole('link', { name: 'About me' }).click();
  await expect(page.getByText(/Kept the period date/).first()).toBeVisible();
  await expect(page.getByText('Belly shows').first()).toBeVisible();
  await isAccessible(page, 'about me');
  await fits(page);
});

test('takes what is suggested for the bookings behind her next stage', async ({ page }) => {
  await signIn(page, demo.client);
  const suggestion = page.getByRole('region', { name: /^Third trimester from Friday 12 March/ });
  await expect(suggestion).toBeVisible();
  await suggestion.getByRole('button', { name: /^Move these \d+$/ }).click();
  await expect(page.getByText(/^\d+ bookings moved\.$/)).toBeVisible();
  await expect(suggestion).toHaveCount(0);
});

test('a wrong password is refused in words', async ({ page, watch }) => {
  await page.goto('/');
  await page.getByLabel('E-mail').fill(demo.client);
  await page.locator('input[type=password]').fill('not the password');
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page.getByRole('alert')).toContainText('is not right');
  await isAccessible(page, 'sign-in');
  // The browser itself notes the 401 on its console.
  watch.errors.splice(0, watch.errors.length, ...watch.errors.filter((e) => !e.includes('401')));
});
