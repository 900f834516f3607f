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
  await page.getByText('Check in', { exact: true }).first().click();
  const floor = page.getByRole('grid', { name: /The floor/ });
  await floor.getByRole('button').first().focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(floor.getByRole('button', { name: /, here$/ })).toHaveCount(1);
});
