// The instructor: her next session, who is in it, what is new, who is here.
import { demo, expect, fits, isAccessible, picture, signIn, test } from './studio.ts';


test('lands on her next session: the floor, ages on the day, what is new', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 900 });
  await signIn(page, demo.instructor);
  await expect(page).toHaveURL(/\/teach/);
  const floor = page.getByRole('grid', { name: /The floor/ });
  await expect(floor.getByRole('button').first()).toBeVisible();
  await expect(floor).toContainText(/\d+w \dd/);
  await isAccessible(page, 'the floor');
  await fits(page);
  await picture(page, 'instructor');
});

test('ticks what is new as read', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await signIn(page, demo.instructor);
  await expect(page.getByRole('heading', { name: 'New since you last looked' })).toBeVisible();
  await fits(page);
  await isAccessible(page, 'the floor on a phone');
  await page.getByRole('button', { name: /read$|^Read$/i }).first().click();
  await expect(page.getByRole('heading', { name: 'New since you last looked' })).toHaveCount(0);
});

test('looks at one person: what she does differently, and whom to call', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await signIn(page, demo.instructor);
  const floor = page.getByRole('grid', { name: /The floor/ });
  await floor.getByRole('button').first().click();
  await expect(page.getByText(/In an emergency|emergency/i).first()).toBeVisible();
  await isAccessible(page, 'one person');
});

test('walks the mats with the arrow keys and checks in', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 900 });
  await signIn(page, demo.instructor);
  await page.getByText('All well: check in', { exact: true }).first().click();
  const floor = page.getByRole('grid', { name: /The floor/ });
  await floor.getByRole('button').first().focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(floor.getByRole('button', { name: /, here, all well$/ })).toHaveCount(1);
});

for (const [width, height] of [[1280, 900], [360, 740]] as const)
  test(`chooses a movement at ${width} pixels: the mats that do something else light and say what`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await signIn(page, demo.instructor);
    const floor = page.getByRole('grid', { name: /The floor/ });
    const plan = page.getByRole('radiogroup', { name: 'Class plan' });
    const lit = floor.locator('[data-lit]');
    const now = page.getByRole('region', { name: 'The movement now' });
    await expect(plan.getByRole('radio', { name: 'Nothing chosen' })).toBeChecked();
    await expect(lit).toHaveCount(0);

    await plan.getByRole('radio', { name: /Hip circles on all fours/ }).check();
    await expect(lit).toHaveCount(1);
    await expect(lit).toContainText('fists, forearms or a wedge');
    await expect(lit).toContainText('Changed');
    await expect(lit).toHaveAccessibleName(/^Nayeli, fists, forearms or a wedge, /);
    await expect(now.getByRole('status')).toHaveText('Hip circles on all fours: 1 does something else');
    await expect(now).toContainText(/Effort \d+ of 10/);
    await isAccessible(page, `a movement chosen at ${width}`);
    await fits(page);
    await picture(page, `plan-${width}`);

    await page.keyboard.press('ArrowUp');
    await expect(now.getByRole('status')).toHaveText(/^Cat stretch: \d+ do something else$/);
    await now.getByRole('button', { name: 'Previous' }).click();
    await expect(now.getByRole('status')).toHaveText(/everybody as taught$/);
    await now.getByRole('button', { name: 'Next' }).click();
    await expect(lit).not.toHaveCount(0);
    await page.keyboard.press('Escape');
    await expect(lit).toHaveCount(0);
    await expect(plan.getByRole('radio', { name: 'Nothing chosen' })).toBeChecked();

    await floor.getByRole('button', { name: /^Nayeli/ }).click();
    const her = page.getByRole('complementary', { name: 'Nayeli' });
    await expect(her).toContainText('Hip circles on all fours: fists, forearms or a wedge');
    await isAccessible(page, `her plan at ${width}`);
    await fits(page);
  });
