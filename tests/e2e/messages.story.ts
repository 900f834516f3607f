// What is told: booked at the desk, written down for the owner, read by the client, and what she does without.
import { demo, expect, fits, isAccessible, signIn, test } from './studio.ts';
import type { Page } from '@playwright/test';

const leave = async (page: Page) => {
  await page.evaluate(() => localStorage.clear());
  await page.goto('about:blank');
  await page.context().clearCookies();
};

test('a message is put, written and read, and a kind of it is stopped', async ({ page, watch }) => {
  test.slow();
  await page.setViewportSize({ width: 1280, height: 900 });
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: /^Messages/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Messages' })).toBeVisible();
  await expect(page.getByText('Nothing leaves the house yet')).toBeVisible();
  await page.getByRole('button', { name: 'Send me a test message' }).click();
  const row = page.getByRole('row').filter({ hasText: 'A test message' });
  await expect(row.getByText('Sent', { exact: true })).toBeVisible();
  await expect(row.getByText(/^Written to mail\//)).toBeVisible();
  await fits(page);
  await isAccessible(page, 'the log of messages');
  await page.screenshot({ path: 'test-results/messages-log.png' });

  await row.getByRole('button', { name: /^Read: A test message/ }).click();
  const dialog = page.getByRole('dialog', { name: 'Message' });
  await expect(
    dialog.frameLocator('iframe').getByText('This message was sent to try whether messages arrive.'),
  ).toBeVisible();
  await dialog.getByRole('tab', { name: 'As plain text' }).click();
  await expect(dialog.getByText(/This message was sent to try/)).toBeVisible();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    dialog.getByRole('link', { name: 'The file as it was written' }).click(),
  ]);
  expect(file.suggestedFilename()).toMatch(/\.eml$/);
  await page.screenshot({ path: 'test-results/messages-one.png' });
  await page.keyboard.press('Escape');

  await page.getByLabel('Name or e-mail').fill('nobody of that name');
  await expect(page.getByText('No message like that')).toBeVisible();
  await page.getByRole('link', { name: 'See every kind' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Kinds of message' })).toBeVisible();
  await page.getByRole('button', { name: 'Suggestions for your classes' }).click();
  await expect(page.getByText('Whoever gets it can stop it')).toBeVisible();
  await fits(page);
  await isAccessible(page, 'kinds of message');
  await page.screenshot({ path: 'test-results/messages-kinds.png' });

  // She reads what was written to her, on her phone, and does without one kind.
  await leave(page);
  await page.setViewportSize({ width: 360, height: 760 });
  await signIn(page, demo.client);
  await page.getByRole('link', { name: 'Messages' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Messages' })).toBeVisible();
  const suggestions = page.getByRole('switch', { name: 'Suggestions for your classes' });
  await expect(suggestions).toBeChecked();
  await suggestions.uncheck();
  await expect(suggestions).not.toBeChecked();
  await page.reload();
  await expect(suggestions).not.toBeChecked();
  await fits(page);
  await isAccessible(page, 'her messages');
  await page.screenshot({ path: 'test-results/messages-mine.png', fullPage: true });
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.screenshot({ path: 'test-results/messages-mine-dark.png', fullPage: true });
  await page.emulateMedia({ colorScheme: 'light' });

  // A link that is not whole says what to do.
  await leave(page);
  await page.goto('/mail/stop/not-whole');
  await expect(page.getByText(/This link is not whole/)).toBeVisible();
  await isAccessible(page, 'a link that is not whole');
  // The page of a message runs nothing, not even what looks at its contrast.
  const meant = ['status of 404', "Blocked script execution in 'about:srcdoc'"];
  watch.errors.splice(0, watch.errors.length, ...watch.errors.filter((e) => !meant.some((m) => e.includes(m))));
});
