// The owner plans: a draft of two weeks, broken, mended and published; by the pointer and by the keyboard.
import type { Locator, Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, signIn, test } from './studio.ts';

test.use({ viewport: { width: 1280, height: 900 } });
test.setTimeout(120_000);

const card = (page: Page, name: RegExp): Locator =>
  page.getByRole('application').getByRole('button', { name }).and(page.locator('[data-card]')).first();
const hand = (page: Page): Locator => page.locator('[data-hand]');

async function makeDraft(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Week', exact: true }).click();
  await page.getByRole('button', { name: 'Week after' }).click();
  await expect(page.getByRole('heading', { level: 1, name: '8 Mar to 14 Mar' })).toBeVisible();
  await page.getByRole('button', { name: 'Change in a draft' }).click();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('March');
  await page.getByRole('button', { name: 'Make the draft' }).click();
  await expect(page.getByRole('application', { name: /by room/ })).toBeVisible();
}

test('breaks a week by pointer and by keyboard, sees it named on the way, mends and publishes it', async ({ page }) => {
  await signIn(page, demo.owner);
  await makeDraft(page);
  await isAccessible(page, 'the board by room');
  await fits(page);
  await page.screenshot({ path: 'test-results/board-room.png' });

  // By pointer: the evening class of Tuesday onto the one before it in the same room. It is named before it is let go.
  const later = card(page, /^Second-trimester core, Tuesday 9 March, 19:15/);
  const earlier = card(page, /^Early core, Tuesday 9 March, 18:00/);
  await later.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const from = (await later.boundingBox())!;
  const to = (await earlier.boundingBox())!;
  await page.mouse.move(from.x + 30, from.y + 8);
  await page.mouse.down();
  await page.mouse.move(from.x + 30, from.y + 2, { steps: 3 });
  await page.mouse.move(to.x + 30, to.y + 15, { steps: 6 });
  await expect(hand(page).getByText(/^Cannot be: Cork room would hold .* at once/)).toBeVisible();
  await page.screenshot({ path: 'test-results/board-dragging.png' });
  // Taken back: nothing has changed.
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(later).toBeVisible();
  // Letting go of the button is no press: nothing opens over the board.
  await expect(page.getByRole('dialog')).toHaveCount(0);

  // Put down there at the second attempt: it stands with a word, cannot be published, and can be undone.
  const again = (await later.boundingBox())!;
  await page.mouse.move(again.x + 30, again.y + 8);
  await page.mouse.down();
  await page.mouse.move(again.x + 30, again.y + 2, { steps: 3 });
  const onto = (await earlier.boundingBox())!;
  await page.mouse.move(onto.x + 30, onto.y + 15, { steps: 6 });
  await page.mouse.up();
  await expect(card(page, /^Second-trimester core, Tuesday 9 March, 18:\d\d.*Cork room would hold/)).toContainText('Room taken');
  await isAccessible(page, 'the board with a conflict');
  await page.getByRole('button', { name: 'Publish…' }).click();
  await expect(page.getByRole('button', { name: 'Publish now' })).toBeDisabled();
  await page.getByRole('button', { name: 'Not yet' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(later).toBeVisible();

  // By keyboard: up step by step until it meets the class before it, which is told; then elsewhere.
  await card(page, /^Second-trimester core, Tuesday 9 March, 19:15/).focus();
  await page.keyboard.press('Space');
  for (let step = 0; step < 3; step++) await page.keyboard.press('ArrowUp');
  await expect(hand(page).getByRole('status')).toContainText(/18:30.*Against it: .*Cork room would hold/);
  await page.keyboard.press('Escape');
  await expect(card(page, /^Second-trimester core, Tuesday 9 March, 19:15/)).toBeFocused();
  await page.keyboard.press('Space');
  for (let step = 0; step < 2; step++) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('+');
  await expect(hand(page).getByRole('status')).toContainText('19:45 to 20:40');
  await expect(hand(page).getByRole('status')).toContainText('Nothing stands against it.');
  await page.keyboard.press('Enter');
  const moved = card(page, /^Second-trimester core, Tuesday 9 March, 19:45 to 20:40.*changed/);
  await expect(moved).toBeVisible();
  await expect(moved).toBeFocused();

  // What it changes for those who have booked comes first; then it is the timetable.
  await page.getByRole('button', { name: 'Publish…' }).click();
  await expect(page.getByText('0 added, 1 changed, 0 called off.')).toBeVisible();
  await expect(page.getByText(/19:15 to 20:05 becomes 19:45 to 20:40/).last()).toBeVisible();
  await expect(page.getByText(/told/).first()).toBeVisible();
  await isAccessible(page, 'what publishing changes');
  await page.screenshot({ path: 'test-results/board-publish.png' });
  const anyway = page.getByRole('checkbox', { name: /Publish it all the same/ });
  if (await anyway.isVisible()) await anyway.check();
  await page.getByRole('button', { name: 'Publish now' }).click();
  await expect(page.getByText(/Published: 0 added, 1 changed, 0 called off/)).toBeVisible();
  await expect(page.getByRole('link', { name: /19:45/ }).first()).toBeVisible();
});
