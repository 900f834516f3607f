// Staff: what each can teach and when, what is paid, and a term given to them.
import { demo, expect, fits, isAccessible, signIn, test } from './studio.ts';

const phone = { width: 360, height: 780 };
const wide = { width: 1280, height: 900 };

test('the owner enters days away and is told which sessions need somebody else', async ({ page }) => {
  await page.setViewportSize(wide);
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Staff', exact: true }).click();
  await isAccessible(page, 'staff');
  await page.getByRole('link', { name: 'Saskia Verhollen' }).first().click();
  await expect(page.getByRole('heading', { level: 1, name: 'Saskia Verhollen' })).toBeVisible();
  await isAccessible(page, 'one instructor');
  await page.getByRole('tab', { name: 'Days away' }).click();
  await page.getByRole('textbox', { name: 'First day away' }).fill('8 Mar 2027');
  await page.getByRole('textbox', { name: 'Last day away' }).fill('14 Mar 2027');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Enter days away' }).click();
  await expect(page.getByText('Sessions on these days that need somebody else:')).toBeVisible();
  await isAccessible(page, 'days away');
  await fits(page);
  await page.getByRole('button', { name: /^Withdraw the leave from/ }).first().click();
  await expect(page.getByText('No days away.')).toBeVisible();
});

test('what was taught is paid by the rate that was entered', async ({ page }) => {
  await page.setViewportSize(wide);
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Pay', exact: true }).click();
  await expect(page.getByText(/38\.00 EUR per session/).first()).toBeVisible();
  await page.getByLabel('Amount').fill('4100');
  await page.getByRole('button', { name: 'Enter the rate' }).click();
  await expect(page.getByText(/41\.00 EUR per session/).first()).toBeVisible();
  await isAccessible(page, 'pay');
  await fits(page);
  await page.getByRole('link', { name: 'Travel times' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Travel times' })).toBeVisible();
  await isAccessible(page, 'travel times');
  await fits(page);
});

test('an instructor keeps the hours she can be asked for, on her phone and by the keyboard', async ({ page }) => {
  await page.setViewportSize(phone);
  await signIn(page, demo.instructor);
  await page.getByRole('link', { name: 'My hours' }).click();
  await expect(page.getByRole('cell', { name: 'March 2027', exact: true })).toBeVisible();
  await isAccessible(page, 'her hours');
  await fits(page);
  await page.getByRole('tab', { name: 'Availability' }).click();
  const first = page.getByRole('button', { name: /^Saturday 14:00/ });
  await first.focus();
  await page.keyboard.press('Space');
  await expect(first).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Shift+ArrowDown');
  await expect(page.getByRole('button', { name: /^Saturday 14:30/ })).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByRole('button', { name: /^Saturday 14:30/ })).toBeFocused();
  await isAccessible(page, 'her availability');
  await fits(page);
});

test('a term is assigned, compared with the present plan, and made a draft', async ({ page }) => {
  test.setTimeout(120_000);
  await page.setViewportSize(wide);
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Assign a term' }).click();
  await page.getByRole('radio', { name: 'Only sessions that nobody teaches yet' }).check();
  await isAccessible(page, 'asking for a term');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(page.getByRole('button', { name: 'Make a draft of it' })).toBeVisible({ timeout: 90_000 });
  await isAccessible(page, 'a term compared');
  await fits(page);
  await page.screenshot({ path: 'test-results/term.png', fullPage: true });
  await page.getByRole('button', { name: 'Make a draft of it' }).click();
  await page.getByRole('link', { name: 'To the draft' }).click();
  await expect(page.getByRole('button', { name: 'Publish…' })).toBeVisible();
});
