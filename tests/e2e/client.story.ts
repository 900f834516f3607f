// The client, on her phone.
import { demo, expect, fits, isAccessible, picture, signIn, signInByHand, test } from './studio.ts';

test.use({ viewport: { width: 360, height: 740 }, hasTouch: true });

test('sees her tape, her next class and what suits her', async ({ page }) => {
  await signInByHand(page, demo.client);
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

test('reads what changes for her before she books', async ({ page }) => {
  await signIn(page, demo.client);
  const choices = page.getByRole('region', { name: 'Classes that suit you' });
  const line = choices.getByRole('button', { name: /^\d+ of \d+ minutes as taught · \d+ movements? changes?: / }).first();
  await expect(line).toBeVisible();
  const which = (await line.getAttribute('aria-label'))!.split(': ').slice(1).join(': ');
  await line.click();
  await expect(line).toHaveAttribute('aria-expanded', 'true');
  const choice = choices.getByRole('listitem').filter({ has: page.getByRole('button', { name: `Book: ${which}` }) });
  await expect(choice).toContainText(/Because:|The reasons:|change for the same reason/);
  await expect(choice).toContainText(/Changed|Instead|Left out/);
  await isAccessible(page, 'what changes before booking');
  await fits(page);
  await picture(page, 'what-changes');
  await choice.getByRole('button', { name: `Book: ${which}` }).click();
  await expect(page.getByText(`Booked: ${which}.`)).toBeVisible();

  // The same in what she has booked.
  const booked = page.getByRole('region', { name: 'Your next class' });
  const mine = booked.getByRole('button', { name: /minutes as taught/ }).first();
  await mine.click();
  await expect(booked).toContainText('Your instructor knows what you do instead');
  await isAccessible(page, 'what changes in what she booked');
  await fits(page);
});

test('reads what her instructors noted, in a quiet place', async ({ page }) => {
  await signIn(page, demo.client);
  await page.getByRole('link', { name: 'About me' }).click();
  await page.getByRole('button', { name: 'What your instructors noted' }).click();
  await expect(page.getByText('Nothing has been noted.')).toBeVisible();
  await isAccessible(page, 'her notes');
  await fits(page);
});
