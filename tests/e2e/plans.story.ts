// Class plans: made by keyboard, looked at for the people booked, mended, kept for one session or for the class.
import { demo, expect, fits, isAccessible, picture, signIn, test } from './studio';
import type { Page } from '@playwright/test';

const names = (page: Page) => page.getByRole('list', { name: 'Movements in order' }).getByRole('heading');
const search = (page: Page) => page.getByRole('combobox', { name: 'Add a movement' });

/** Adds a movement as somebody does who uses no mouse. */
async function add(page: Page, typed: string): Promise<void> {
  await search(page).focus();
  await page.keyboard.type(typed);
  await expect(page.getByRole('option').first()).toBeVisible();
  await page.keyboard.press('Enter');
}

test('changes the plan of her next session by keyboard alone, sees who does something else, and mends it', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 900 });
  await signIn(page, demo.instructor);
  await page.getByRole('link', { name: 'Change the plan for this session' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Mobility and breath' })).toBeVisible();
  await expect(names(page)).toHaveCount(14);

  // Room first: the last movement goes, and comes back by one key.
  await page.getByRole('button', { name: 'Remove Rest on the side' }).focus();
  await page.keyboard.press('Enter');
  await expect(names(page)).toHaveCount(13);
  await expect(page.getByRole('button', { name: 'Remove Long out-breath' })).toBeFocused();
  await page.keyboard.press('Control+z');
  await expect(names(page)).toHaveCount(14);
  await page.getByRole('button', { name: 'Remove Rest on the side' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('status', { name: 'Time planned' })).toHaveText(/41 of 45 minutes.*4 minutes still free/);

  await add(page, 'front pl');
  await expect(names(page).last()).toHaveText('14. Front plank');
  await expect(page.getByRole('status', { name: 'Time planned' })).toHaveText(/44 of 45 minutes.*1 minute still free/);
  const plank = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: /Front plank/ }) });
  await expect(plank).toContainText('Instead');
  await expect(plank).toContainText('Aurélie');
  await expect(plank).toContainText('Side plank instead');

  // Lifted, moved up and put down by its grip.
  await plank.getByRole('button', { name: 'Move Front plank, number 14' }).focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Space');
  await expect(names(page).nth(12)).toHaveText('13. Front plank');
  await isAccessible(page, 'the plan being made');
  await fits(page);

  await page.getByRole('button', { name: 'A plan that suits everybody' }).focus();
  await page.keyboard.press('Enter');
  const outcome = page.getByRole('status').filter({ hasText: '1 movement gave way' });
  await expect(outcome).toContainText('13. Front plank → Side-lying leg lift');
  await expect(outcome).toContainText(/(\d+) of \1 can do Side-lying leg lift; Front plank was for 4\./);
  await expect(names(page).nth(12)).toHaveText('13. Side-lying leg lift');
  await isAccessible(page, 'a plan that suits everybody');
  await picture(page, 'plan-making');
  await outcome.getByRole('button', { name: 'Undo these changes' }).focus();
  await page.keyboard.press('Enter');
  await expect(names(page).nth(12)).toHaveText('13. Front plank');
  await expect(page.getByRole('button', { name: 'A plan that suits everybody' })).toBeFocused();
  await page.keyboard.press('Control+y');
  await expect(names(page).nth(12)).toHaveText('13. Side-lying leg lift');

  await page.getByRole('button', { name: 'Save for this session only' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('This session has a plan of its own')).toBeVisible();

  await page.getByRole('link', { name: 'Next session' }).click();
  const taught = page.getByRole('radiogroup', { name: 'Class plan' });
  await expect(taught.getByRole('radio', { name: /Side-lying leg lift/ })).toBeVisible();
  await expect(taught.getByRole('radio', { name: /Rest on the side/ })).toHaveCount(0);

  // And back to the plan of the class.
  await page.getByRole('link', { name: 'Change the plan for this session' }).click();
  await page.getByRole('button', { name: 'Follow the class again' }).click();
  await expect(names(page).last()).toHaveText('14. Rest on the side');
});

test('keeps a draft over a reload, and asks before it is left', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  page.on('dialog', (dialog) => void dialog.accept());
  await signIn(page, demo.instructor);
  await page.getByRole('link', { name: 'Class plans' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Class plans' })).toBeVisible();
  await isAccessible(page, 'the list of plans');
  await fits(page);
  await page.getByRole('link', { name: 'Birth-ready movement' }).click();
  await expect(names(page)).toHaveCount(14);
  await page.getByRole('button', { name: 'Move Deep supported squat up' }).click();
  await expect(names(page).nth(2)).toHaveText('3. Deep supported squat');
  const minutes = page.getByRole('textbox', { name: 'Minutes of Deep supported squat' });
  await minutes.fill('2');
  await page.reload();
  await expect(names(page).nth(2)).toHaveText('3. Deep supported squat');
  await expect(minutes).toHaveValue('2 min');
  await expect(page.getByText('Roxana').first()).toBeVisible();
  await isAccessible(page, 'a draft on a phone');
  await fits(page);

  await page.getByRole('link', { name: 'All class plans' }).click();
  const asked = page.getByRole('dialog', { name: 'This plan is not saved' });
  await expect(asked).toBeVisible();
  await isAccessible(page, 'leaving a draft');
  await asked.getByRole('button', { name: 'Stay here' }).click();
  await expect(names(page).nth(2)).toHaveText('3. Deep supported squat');
  await page.getByRole('link', { name: 'All class plans' }).click();
  await asked.getByRole('button', { name: 'Leave and keep the draft' }).click();
  await page.getByRole('link', { name: 'Birth-ready movement' }).click();
  await expect(names(page).nth(2)).toHaveText('3. Deep supported squat');
  await page.getByRole('link', { name: 'All class plans' }).click();
  await asked.getByRole('button', { name: 'Throw the draft away' }).click();
  await page.getByRole('link', { name: 'Birth-ready movement' }).click();
  await expect(names(page).nth(3)).toHaveText('4. Deep supported squat');
});

test('the owner changes the class plan, a second owner’s draft meets it, and the old version comes back', async ({ page, browser, studio }) => {
  await page.setViewportSize({ width: 1280, height: 900 });
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Class plans' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Class plans' })).toBeVisible();
  await page.getByRole('link', { name: 'Early core', exact: true }).click();
  await expect(names(page)).toHaveCount(16);
  await isAccessible(page, 'the owner’s plan');

  const other = await (await browser.newContext({ baseURL: studio.url })).newPage();
  await signIn(other, demo.owner);
  await other.goto(page.url());
  await expect(names(other)).toHaveCount(16);
  await other.getByRole('button', { name: 'Remove Hugging the knees' }).click();

  await page.getByRole('button', { name: 'Remove Bridge' }).click();
  await page.getByRole('button', { name: 'Save for the class' }).click();
  await expect(page.getByText('The class plan, version 2.')).toBeVisible();
  await expect(page.getByRole('region', { name: 'Versions of the class plan' })).toContainText('Version 2, in force');

  // Hers is told at once, and loses nothing.
  const meanwhile = other.getByRole('alert').filter({ hasText: 'changed the class plan meanwhile' });
  await expect(meanwhile).toBeVisible();
  await expect(names(other)).toHaveCount(15);
  await expect(other.getByRole('button', { name: 'Save for the class' })).toBeDisabled();
  await meanwhile.getByRole('button', { name: 'Look at theirs' }).click();
  await expect(other.getByRole('dialog')).toContainText('Hugging the knees');
  await isAccessible(other, 'what somebody else saved');
  await other.keyboard.press('Escape');
  await meanwhile.getByRole('button', { name: 'Go on with mine' }).click();
  await other.getByRole('button', { name: 'Save for the class' }).click();
  await expect(other.getByText('The class plan, version 3.')).toBeVisible();
  await other.context().close();

  await expect(page.getByText('The class plan, version 3.')).toBeVisible();
  await page.getByRole('button', { name: 'Look at version 1' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Bring it back as a draft' }).click();
  await expect(names(page)).toHaveCount(16);
  await page.getByRole('button', { name: 'Save for the class' }).click();
  await expect(page.getByText('The class plan, version 4.')).toBeVisible();
});
