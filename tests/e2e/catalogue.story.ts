// The owner and what the verdicts rest on: reads a rule, asks what if, chooses a policy, changes a rule by file and back.
import { readFile, writeFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, picture, signIn, test } from './studio.ts';

test.use({ viewport: { width: 1280, height: 900 } });

const openRules = async (page: Page) => {
  await signIn(page, demo.owner);
  await page.getByRole('navigation', { name: 'Studio' }).getByRole('link', { name: 'Rules' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Rules' })).toBeVisible();
};

const goTo = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Rules' }).getByRole('link', { name, exact: true }).click();

test('the rule on lying on the back, with its source beside it', async ({ page }) => {
  await openRules(page);
  await page.getByRole('searchbox', { name: 'Find' }).fill('lying back');
  const rules = page.getByRole('list', { name: 'Rules found' });
  const rule = rules.getByRole('listitem').filter({ hasText: 'supine-from-14-weeks' }).filter({ hasText: 'instead of lying' });
  await expect(rule).toContainText('From 14w 0d on');
  await expect(rule).toContainText('Instead');
  // The reference row M01 is the source that the catalogue names for it.
  const sources = await (await page.request.get('/api/catalogue/sources')).json();
  const cite: string = sources.find((source: { id: string }) => source.id === 'M01').cite;
  await expect(rule).toContainText(cite.replace('; from memory', ''));
  await expect(page).toHaveURL(/find=lying/);
  await isAccessible(page, 'rules');
  await fits(page);

  await page.getByRole('searchbox', { name: 'Find' }).fill('');
  await page.getByLabel('Only from memory').check();
  await expect(rules.getByRole('listitem').first()).toContainText('From memory: please verify');
  await picture(page, 'rules');
});

test('the movements, what is gentler, and which rules touch them', async ({ page }) => {
  await openRules(page);
  await goTo(page, 'Movements');
  await page.getByRole('searchbox', { name: 'Find' }).fill('front plank');
  const plank = page.getByRole('listitem').filter({ hasText: 'Front plank' }).first();
  await expect(plank).toContainText('Gentler');
  await plank.getByText(/rules? touch/).click();
  await expect(plank.getByText('On the mat').first()).toBeVisible();
  await isAccessible(page, 'movements');
  await fits(page);
  await page.setViewportSize({ width: 360, height: 760 });
  await fits(page);
});

// Common practice, no published source: front planks in the first trimester only, and never with a known separation.
test('what if: second trimester and a separation, for a class with a front plank', async ({ page }) => {
  await openRules(page);
  await goTo(page, 'What if');
  const classes = await (await page.request.get('/api/classes')).json();
  let asked: { id: number; name: string } | undefined;
  for (const one of classes) {
    const answer = await page.request.post('/api/what-if', { data: { stage: 'first-trimester', planId: one.id } });
    const { movements = [] } = answer.ok() ? await answer.json() : {};
    if (movements.some((movement: { name: string }) => movement.name === 'Front plank')) asked = one;
  }
  expect(asked, 'a class of the demo with a front plank').toBeDefined();
  await page.getByRole('combobox', { name: 'Stage' }).click();
  await page.getByRole('option', { name: 'Second trimester' }).click();
  await page.getByRole('combobox', { name: 'Class' }).click();
  await page.getByRole('option', { name: asked!.name, exact: true }).click();
  await page.getByRole('combobox', { name: 'What is known of her' }).fill('parted now');
  await page.getByRole('option', { name: 'Belly muscles parted now' }).click();
  await page.keyboard.press('Escape');

  const plank = page.getByRole('list', { name: 'Movements' }).getByRole('listitem').filter({ hasText: 'Front plank' }).first();
  await expect(plank).toContainText(/Instead|Left out/);
  await expect(plank.getByRole('list', { name: /Why/ })).toContainText(/second trimester.*middle of your belly/);
  await expect(page.getByRole('status').filter({ hasText: 'against nothing known' })).toBeVisible();
  await expect(page).toHaveURL(/factors=separation-now/);
  await isAccessible(page, 'what if');
  await fits(page);
  await picture(page, 'what-if');

  // The address is the question.
  await page.reload();
  await expect(plank).toContainText(/Instead|Left out/);
  await page.setViewportSize({ width: 360, height: 760 });
  await fits(page);
});

test('chooses a policy: sees whom it concerns, confirms, and finds it on record', async ({ page }) => {
  await openRules(page);
  await goTo(page, 'Policies');
  await isAccessible(page, 'policies');
  await page.getByRole('button', { name: 'Change: supine from' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('radio', { name: '28w0d' }).check();
  await dialog.getByRole('button', { name: 'See what it changes' }).click();
  await expect(dialog.getByText(/bookings ahead looked at/)).toBeVisible();
  await expect(dialog.getByText('28w0d instead of 14w0d')).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Save' })).toBeDisabled();
  await isAccessible(page, 'whom a policy concerns');
  await dialog.getByLabel('The studio means it').check();
  await dialog.getByLabel('Why').fill('Agreed with the midwives.');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toHaveCount(0);
  const changes = page.getByRole('list', { name: 'Changes of policies' });
  await expect(changes.getByRole('listitem').first()).toContainText('14w0d became 28w0d');
  await expect(changes).toContainText('Agreed with the midwives.');
  await expect(page.getByText('Less cautious than the default')).toBeVisible();

  await page.getByRole('button', { name: 'Change: supine from' }).click();
  await dialog.getByRole('button', { name: /Back to the default/ }).click();
  await dialog.getByRole('button', { name: 'See what it changes' }).click();
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(changes.getByRole('listitem').first()).toContainText('28w0d became 14w0d (the default)');
  await fits(page);
});

test('changes a rule by file: tries it, puts it in force, and goes back', async ({ page }, info) => {
  await openRules(page);
  await goTo(page, 'Change by file');
  const downloading = page.waitForEvent('download');
  await page.getByRole('link', { name: 'movement_rules.csv' }).first().click();
  const file = info.outputPath('movement_rules.csv');
  await (await downloading).saveAs(file);
  const text = await readFile(file, 'utf8');

  await writeFile(file, `${text}ours-one,,,,\n`);
  await page.locator('input[type=file]').setInputFiles(file);
  await expect(page.getByText('The number of fields is not that of the header.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Put in force' })).toHaveCount(0);
  await isAccessible(page, 'a file with an error');

  const lines = text.split('\n');
  const columns = lines[0].split(',');
  const row = Object.fromEntries(columns.map((column) => [column, '']));
  Object.assign(row, {
    id: 'ours-no-front-plank',
    movement: 'front-plank',
    verdict: 'left-out',
    for_her: 'We leave the front plank out here.',
    instruction: 'no front plank',
    source: 'common-practice',
  });
  await writeFile(file, `${text}${columns.map((column) => row[column]).join(',')}\n`);
  await page.locator('input[type=file]').setInputFiles(file);
  await expect(page.getByRole('heading', { name: 'The files can be used' })).toBeVisible();
  await expect(page.getByRole('list', { name: 'Rows that differ' })).toContainText('ours-no-front-plank');
  await expect(page.getByText(/bookings ahead looked at/)).toBeVisible();
  await isAccessible(page, 'whom a rule concerns');
  await fits(page);
  await picture(page, 'rules-by-file');
  await page.getByLabel('Why').fill('Our own experience.');
  await page.getByRole('button', { name: 'Put in force' }).click();
  await expect(page.getByRole('heading', { name: 'Version 1 is in force' })).toBeVisible();
  const versions = page.getByRole('list', { name: 'Versions' });
  await expect(versions.getByRole('listitem').first()).toContainText('Our own experience.');

  await goTo(page, 'Rules');
  await page.getByRole('searchbox', { name: 'Find' }).fill('ours-no-front-plank');
  await expect(page.getByText('1 rule of')).toBeVisible();

  await goTo(page, 'Change by file');
  await page.getByRole('button', { name: /going back to The program’s own rules/ }).click();
  await expect(page.getByRole('heading', { name: 'Back to the program’s own rules' })).toBeVisible();
  await page.getByRole('button', { name: 'Put in force' }).click();
  await expect(page.getByRole('heading', { name: 'Version 2 is in force' })).toBeVisible();
  await expect(page.getByText('the same as the program’s own rules')).toBeVisible();
  await isAccessible(page, 'versions');
});

test('an instructor asks what if, and reads movements, at the width of a telephone', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 760 });
  await signIn(page, demo.instructor);
  await page.getByRole('link', { name: 'What if' }).click();
  await page.getByRole('combobox', { name: 'Stage' }).click();
  await page.getByRole('option', { name: 'Third trimester' }).click();
  await expect(page.getByRole('heading', { name: /Third trimester/ })).toBeVisible();
  await expect(page.getByText(/as taught/).first()).toBeVisible();
  await fits(page);
  await page.getByRole('link', { name: 'Movements' }).click();
  await expect(page.getByText(/\d+ movements/).first()).toBeVisible();
  await isAccessible(page, 'movements on a telephone');
  await fits(page);
});
