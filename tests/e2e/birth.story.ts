// A birth and a loss, as she tells of them, and what the studio makes of it.
import type { Browser, Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, signIn, test, type Studio } from './studio.ts';

// Each has three people at three pages, every one looked at in light and in dark.
test.describe.configure({ timeout: 180_000 });

const phone = { viewport: { width: 360, height: 740 }, hasTouch: true };

/** Somebody new with an account, so many days before her due date. */
async function someone(browser: Browser, studio: Studio, name: string, dueIn: number) {
  const owner = await browser.newPage({ baseURL: studio.url });
  await signIn(owner, demo.owner);
  const email = `${name.split(' ')[0]!.toLowerCase()}@mail.example`;
  const due = new Date(Date.parse('2027-03-03') + dueIn * 86_400_000).toISOString().slice(0, 10);
  const [home] = await (await owner.request.get('/api/locations')).json();
  const made = await owner.request.post('/api/clients', {
    data: { name, email, phone: '+351 990 100 777', homeLocationId: home.id, dating: { stated: due } },
  });
  expect(made.status(), await made.text()).toBe(201);
  const { id } = await made.json();
  const account = await owner.request.post(`/api/clients/${id}/account`, { data: { password: demo.password } });
  expect(account.ok()).toBe(true);
  return { owner, email, id: id as number };
}

const onAPhone = async (browser: Browser, studio: Studio, email: string): Promise<Page> => {
  const context = await browser.newContext({ ...phone, baseURL: studio.url, reducedMotion: 'reduce', locale: 'en-GB' });
  const page = await context.newPage();
  await signIn(page, email);
  return page;
};

test('at 38 weeks she tells of the birth in two taps, and takes it back the same day', async ({ browser, studio }) => {
  const { owner, email } = await someone(browser, studio, 'Thora Wakelyn', 14);
  const page = await onAPhone(browser, studio, email);
  const birth = page.getByRole('group', { name: 'If you have given birth' });
  await expect(birth).toBeVisible();
  await isAccessible(page, 'her page at 38 weeks');
  await fits(page);
  await birth.getByRole('button', { name: 'Yesterday' }).click();
  await isAccessible(page, 'how it was');
  await fits(page);
  await birth.getByRole('button', { name: 'Caesarean' }).click();
  const after = page.getByRole('status', { name: 'What happens now' });
  await expect(after).toContainText('There is nothing you need to do now');
  await expect(page.getByText(/after the birth/).first()).toBeVisible();
  // Nothing is asked of her for now, and nobody cheers.
  await expect(page.getByRole('region', { name: 'What we need from you' })).toHaveCount(0);
  await expect(page.getByText(/congratulations|hooray|wonderful/i)).toHaveCount(0);
  await isAccessible(page, 'her page after the birth');
  await fits(page);

  await page.getByRole('link', { name: 'Put the day or how right' }).click();
  await page.getByRole('button', { name: 'Correct the birth' }).click();
  const sheet = page.getByRole('dialog', { name: 'The birth' });
  await expect(sheet.getByRole('radio', { name: 'Caesarean' })).toBeChecked();
  await isAccessible(page, 'correcting the birth');
  await sheet.getByRole('button', { name: 'Take the birth back' }).click();
  await expect(page.getByText('Taken back.')).toBeVisible();
  await expect(page.getByText('Due 17 March 2027.')).toBeVisible();
  await page.context().close();
  await owner.close();
});

test('an early birth: plain words for her, and a call for somebody at the desk', async ({ browser, studio }) => {
  const { owner, email } = await someone(browser, studio, 'Signe Haldimar', 63);
  const page = await onAPhone(browser, studio, email);
  // At 31 weeks it is there and does not stand in her way.
  await expect(page.getByRole('group', { name: 'If you have given birth' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Tell us that something has changed' }).click();
  await page.getByRole('button', { name: 'I have given birth' }).click();
  await expect(page.getByRole('group', { name: 'Loading' })).toHaveCount(0);
  await isAccessible(page, 'something has changed');
  await page.getByRole('button', { name: 'Today', exact: true }).click();
  await page.getByRole('button', { name: 'Rather not say, or not known' }).click();
  await expect(page.getByRole('status', { name: 'What happens now' })).toContainText(
    'Somebody from the studio will ring you in the next days. You need not do anything',
  );
  await isAccessible(page, 'her page after an early birth');
  await fits(page);
  await page.context().close();

  const desk = await browser.newPage({ baseURL: studio.url });
  await signIn(desk, demo.desk);
  await desk.goto('/desk/flags?kind=ringHer');
  const item = desk.getByRole('listitem').filter({ hasText: 'Signe Haldimar' });
  await expect(item).toContainText('Please ring her, kindly and without asking for anything.');
  await expect(item).not.toContainText(/birth|born|weeks/i);
  await isAccessible(desk, 'whom to ring');
  await item.getByRole('button', { name: 'She was rung: Signe Haldimar' }).click();
  await expect(item).toHaveCount(0);
  await desk.close();
  await owner.close();
});

test('a loss she sets herself: the desk does not find her, and the owner opens the way back', async ({ browser, studio }) => {
  const { owner, email, id } = await someone(browser, studio, 'Ragna Ellisworth', 150);
  const desk = await browser.newPage({ baseURL: studio.url });
  await signIn(desk, demo.desk);
  await desk.goto(`/desk/clients/${id}`);
  await expect(desk.getByRole('heading', { level: 1, name: /Ragna/ })).toBeVisible();

  const page = await onAPhone(browser, studio, email);
  await page.getByRole('button', { name: 'Tell us that something has changed' }).click();
  await page.getByRole('button', { name: 'My pregnancy has ended' }).click();
  await isAccessible(page, 'telling of a loss');
  await page.getByRole('button', { name: 'Yes, please do this' }).click();
  await expect(page.getByText('nothing is asked of you', { exact: false })).toBeVisible();
  await expect(page.getByText(/due|week|trimester/i)).toHaveCount(0);
  await isAccessible(page, 'her page after a loss');
  await fits(page);
  await page.getByRole('link', { name: 'About me' }).click();
  await expect(page.getByLabel('Phone').first()).toBeVisible();
  await isAccessible(page, 'about me after a loss');

  // The card that was open at the desk is gone by itself, and she is not found.
  await expect(desk.getByRole('heading', { level: 1, name: /Ragna/ })).toHaveCount(0);
  expect(await (await desk.request.get('/api/clients?find=ragna')).json()).toEqual([]);

  await owner.goto(`/studio/people/${id}`);
  const back = owner.getByRole('region', { name: 'When she comes again' });
  await expect(back).toBeVisible();
  await isAccessible(owner, 'the way back');
  await back.getByRole('radio', { name: 'in the time after a birth or after the pregnancy ended' }).check();
  await back.getByLabel('Day from which her recovery counts').fill('3 Mar 2027');
  await back.getByLabel('Day from which her recovery counts').press('Tab');
  await expect(back).toContainText('She is asked the health questions afresh, in her own time');
  await isAccessible(owner, 'the way back, filled in');
  await fits(owner);
  await back.getByRole('button', { name: 'Open her page again' }).click();
  await expect(owner.getByText('Early recovery').first()).toBeVisible();
  expect(await (await desk.request.get('/api/clients?find=ragna')).json()).toHaveLength(1);
  await page.context().close();
  await desk.close();
  await owner.close();
});
