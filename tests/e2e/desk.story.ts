// The front desk: from signing in to a booked client, a checked-in one and a settled suggestion.
import { demo, expect, fits, isAccessible, picture, signIn, test } from './studio.ts';

test.use({ viewport: { width: 1280, height: 900 } });

test('today by time, with what needs a person', async ({ page }) => {
  await signIn(page, demo.desk);
  await expect(page).toHaveURL(/\/desk/);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('3 March');
  await expect(page.getByText('Second-trimester core').first()).toBeVisible();
  await isAccessible(page, 'the desk');
  await fits(page);
  await picture(page, 'desk');
});

test('finds a client with the keyboard and books the best session in two key presses', async ({ page }) => {
  await signIn(page, demo.desk);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('/');
  await page.keyboard.type('leonor');
  await expect(page.getByRole('option', { name: /Leonor Castrovide/ })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: /Leonor/ })).toBeVisible();
  await expect(page.getByText(/Third trimester/).first()).toBeVisible();
  const best = page.getByRole('button', { name: /^Book:/ }).first();
  const booked = (await best.getAttribute('aria-label'))!.replace('Book: ', '');
  await page.keyboard.press('b');
  await page.keyboard.press('Enter');
  await expect(page.getByText(`Booked: ${booked}.`)).toBeVisible();
  await expect(page.getByRole('button', { name: `Cancel: ${booked}` })).toBeVisible();
  await isAccessible(page, 'a client’s card');
  await fits(page);
});

test('sees why not, and never a condition', async ({ page }) => {
  await signIn(page, demo.desk);
  await page.keyboard.press('/');
  await page.keyboard.type('delphine');
  await expect(page.getByRole('option', { name: /Delphine/ })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Nothing she may book in the next four weeks')).toBeVisible();
  await page.getByRole('button', { name: /sessions she may not book, and why/ }).click();
  await expect(page.getByText('Does not suit her on that date; her own page says why.').first()).toBeVisible();
  await expect(page.locator('main')).not.toContainText(/blood pressure|hypertension/i);
});

test('cancels with undo', async ({ page }) => {
  await signIn(page, demo.desk);
  await page.keyboard.press('/');
  await page.keyboard.type('ingrid.solvangrey');
  await expect(page.getByRole('option', { name: /Ingrid/ })).toBeVisible();
  await page.keyboard.press('Enter');
  const cancel = page.getByRole('button', { name: /^Cancel: / }).first();
  const which = (await cancel.getAttribute('aria-label'))!.replace('Cancel: ', '');
  await cancel.click();
  await expect(page.getByText(`Cancelled: ${which}.`)).toBeVisible();
  await expect(page.getByRole('button', { name: `Cancel: ${which}` })).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText(`Booked again: ${which}.`)).toBeVisible();
  await expect(page.getByRole('button', { name: `Cancel: ${which}` })).toBeVisible();
});

test('checks somebody in', async ({ page }) => {
  await signIn(page, demo.desk);
  await page.getByRole('link', { name: 'Second-trimester core' }).first().click();
  const roster = page.getByRole('region', { name: 'Roster' });
  const here = roster.getByRole('button', { name: /: all well, check in$/ }).first();
  await here.click();
  await expect(roster.getByText(/1 of \d+ here/)).toBeVisible();
  await isAccessible(page, 'a roster at the desk');
});

test('accepts a suggested move: all her bookings or none', async ({ page }) => {
  await signIn(page, demo.desk);
  await page.getByRole('link', { name: /Suggested moves/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Suggested moves' })).toBeVisible();
  await isAccessible(page, 'suggested moves');
  await fits(page);
  await picture(page, 'moves');
  await page.getByRole('button', { name: 'Accept the moves for Elke Brandsom' }).click();
  await expect(page.getByText(/^Elke Brandsom: \d bookings moved\.$/)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Accept the moves for Elke Brandsom' })).toHaveCount(0);
});

test('adds a client and books her', async ({ page }) => {
  await signIn(page, demo.desk);
  await page.getByRole('link', { name: 'New client' }).click();
  await page.getByLabel('Full name').fill('Theodora Quillfeather');
  await page.getByLabel('Phone', { exact: true }).fill('+351 990 999 001');
  await page.getByLabel('First day of it').fill('10 November 2026');
  await page.getByLabel('First day of it').press('Tab');
  await expect(page.getByText('17 August 2027').first()).toBeVisible();
  await isAccessible(page, 'a new client');
  await page.getByRole('button', { name: 'Add client' }).click();
  await expect(page.getByText('Where does she mostly come?')).toBeVisible();
  await page.getByRole('combobox', { name: 'Home location' }).click();
  await page.getByRole('option', { name: 'Vilarmeira' }).click();
  await page.getByRole('button', { name: 'Add client' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /Theodora/ })).toBeVisible();
  await expect(page.getByText(/letter/i).first()).toBeVisible();
});
