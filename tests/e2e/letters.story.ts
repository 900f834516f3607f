// Letters: handed in at the desk, read by whom the owner gave that to, minded in class; and who saw what.
import type { Browser, Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, picture, signIn, test, type Studio } from './studio.ts';

test.use({ viewport: { width: 1280, height: 900 } });

interface Seated {
  clientId: number;
  bookingId: number;
  called: string;
  name: string;
}

/** Signs in beside the page, to ask the server what it holds. */
const asked = async (browser: Browser, studio: Studio, email: string) => {
  const context = await browser.newContext({ baseURL: studio.url });
  const post = await context.request.post('/api/session', { data: { email, password: demo.password } });
  expect(post.ok()).toBe(true);
  return context;
};

/** People of a class that the demo's instructor teaches in the days ahead. */
const herClass = async (browser: Browser, studio: Studio): Promise<{ id: number; people: Seated[] }> => {
  const instructor = await asked(browser, studio, demo.instructor);
  const sessions: { id: number }[] = await (
    await instructor.request.get('/api/sessions?from=2027-03-04&to=2027-03-12&mine=true')
  ).json();
  // One after the other: the first is enough most of the time, and each is a whole class worked out.
  for (const { id } of sessions) {
    const { people } = await (await instructor.request.get(`/api/sessions/${id}/roster`)).json();
    if (people.length < 3) continue;
    await instructor.close();
    return { id, people };
  }
  throw new Error('No class with people in it.');
};

/** An account that reads letters and does nothing else. */
const reader = async (browser: Browser, studio: Studio, name: string): Promise<string> => {
  const owner = await asked(browser, studio, demo.owner);
  const email = `${name.toLowerCase().replace(' ', '.')}@demo.example`;
  const made = await owner.request.post('/api/accounts', {
    data: { email, name, password: demo.password, roles: ['reviewer'], clientId: null, instructorId: null },
  });
  expect(made.status()).toBe(201);
  await owner.close();
  return email;
};

/** A browser tells every refusal on its console; those this story asks for are no fault of the page. */
const forgive = (watch: { errors: string[] }, status: number) => {
  const ours = watch.errors.filter((e) => !e.includes(`status of ${status}`));
  watch.errors.splice(0, watch.errors.length, ...ours);
};

const type = async (page: Page, label: string, day: string) => {
  await page.getByRole('textbox', { name: label, exact: true }).fill(day);
  await page.keyboard.press('Tab');
};

test('a letter comes to the desk, is read, and is minded in class', async ({ page, browser, studio, watch }, info) => {
  test.slow();
  const { id: session, people } = await herClass(browser, studio);
  const her = people[0]!;

  // The desk: one on paper and a scan.
  await signIn(page, demo.desk);
  await page.goto(`/desk/clients/${her.clientId}`);
  const letters = page.getByRole('region', { name: 'Letters' });
  await expect(letters).toBeVisible();
  await page.getByRole('button', { name: 'File letter' }).click();
  await page.getByRole('button', { name: 'Paper, at the desk' }).click();
  await expect(letters.getByText(/Waiting to be read/)).toHaveCount(1);
  const scan = info.outputPath('letter.png');
  await page.screenshot({ path: scan });
  const page2 = info.outputPath('letter.pdf');
  await page.pdf({ path: page2 });
  for (const file of [scan, page2]) {
    await page.getByRole('button', { name: 'File letter' }).click();
    await page.locator('input[type=file]').setInputFiles(file);
    await page.getByRole('button', { name: 'File the scan' }).click();
    await expect(page.getByRole('dialog')).toHaveCount(0);
  }
  await expect(letters.getByText(/Waiting to be read/)).toHaveCount(3);
  await expect(letters.getByRole('link', { name: /^Open/ })).toHaveCount(0);
  await expect(page.getByRole('button', { name: /Withdraw|Read a paper letter/ })).toHaveCount(0);
  // What is no letter is refused beside the file, and it can be chosen again.
  await page.getByRole('button', { name: 'File letter' }).click();
  await isAccessible(page, 'filing a letter');
  await page.locator('input[type=file]').setInputFiles({ name: 'letter.pdf', mimeType: 'application/pdf', buffer: Buffer.from('<html>') });
  await page.getByRole('button', { name: 'File the scan' }).click();
  await expect(page.getByRole('dialog').getByText(/PDF, JPEG or PNG/).last()).toBeVisible();
  await expect(page.getByRole('button', { name: 'File the scan' })).toBeEnabled();
  await page.getByRole('button', { name: 'Leave it' }).click();

  // Whoever only reads letters lands on them, with their number in the menu.
  const email = await reader(browser, studio, 'Oda Fennimore');
  const context = await browser.newContext({ baseURL: studio.url, viewport: { width: 1280, height: 900 } });
  const reading = await context.newPage();
  await signIn(reading, email);
  await expect(reading).toHaveURL(/\/letters$/);
  const waiting = reading.getByRole('navigation', { name: 'Letters waiting' });
  const hers = waiting.getByRole('link', { name: new RegExp(`^${her.name}`) });
  await expect(hers).toHaveCount(3);
  const before = await waiting.getByRole('link').count();
  await expect(reading.getByRole('navigation', { name: 'Letters', exact: true })).toContainText(`To read${before}`);
  await hers.filter({ hasText: 'on paper' }).click();
  await expect(reading.getByText('It lies at the desk', { exact: false })).toBeVisible();
  await hers.filter({ hasText: 'PDF' }).click();
  await expect(reading.locator('iframe')).toBeVisible();
  await hers.filter({ hasText: 'picture' }).click();
  await expect
    .poll(() => reading.locator('main img').evaluate((img: HTMLImageElement) => img.naturalWidth))
    .toBe(1280);
  await isAccessible(reading, 'a letter to read');
  await fits(reading);
  await picture(reading, 'letters');

  await reading.getByLabel('Written by').fill('Dr Wenna Ashdown');
  await type(reading, 'Written on', '20 Feb 2027');
  await type(reading, 'Its own last day', '19 Feb 2027');
  await reading.getByRole('combobox', { name: 'Leave out' }).click();
  await reading.getByRole('option').first().click();
  await reading.getByRole('combobox', { name: 'Leave out' }).press('Escape');
  await reading.getByLabel('Highest heart rate').fill('138');
  await reading.getByLabel('In words for the instructor').fill('Rests when she asks to.');
  await reading.getByRole('button', { name: 'Save: it counts' }).click();
  // Refused beside the field it is about, with all that was typed still there.
  await expect(reading.getByRole('textbox', { name: 'Its own last day' })).toHaveAttribute('aria-invalid', 'true');
  await expect(reading.getByLabel('In words for the instructor')).toHaveValue('Rests when she asks to.');
  await type(reading, 'Its own last day', '1 Jun 2027');
  await reading.getByRole('button', { name: 'Save: it counts' }).click();
  // The next one is open already; this one cannot count.
  await expect(waiting.getByRole('link')).toHaveCount(before - 1);
  await expect(waiting.locator('[aria-current=page]')).toHaveCount(1);
  await hers.filter({ hasText: 'PDF' }).click();
  await reading.getByRole('button', { name: 'It cannot count …' }).click();
  await reading.getByLabel('It cannot count, because').fill('It is not signed. Please bring a signed one.');
  await reading.getByRole('button', { name: 'It cannot count', exact: true }).click();
  await expect(waiting.getByRole('link')).toHaveCount(before - 2);

  // Her instructor is told what to do, at the next look.
  const teaching = await browser.newContext({ baseURL: studio.url, viewport: { width: 1280, height: 900 } });
  const teacher = await teaching.newPage();
  await signIn(teacher, demo.instructor);
  await teacher.goto(`/teach/sessions/${session}`);
  await teacher
    .getByRole('grid', { name: /The floor/ })
    .getByRole('button', { name: new RegExp(`^${her.called}`) })
    .first()
    .click();
  const details = teacher.getByRole('complementary', { name: her.called });
  await expect(details).toContainText('Rests when she asks to.');
  await expect(details.getByRole('heading', { name: 'How hard' })).toBeVisible();
  await isAccessible(teacher, 'what her letter asks for, in class');
  await teaching.close();

  // Taken back, after being asked once more.
  await reading.getByRole('link', { name: 'Read lately' }).first().click();
  await expect(reading.getByText('Dr Wenna Ashdown', { exact: false }).first()).toBeVisible();
  await isAccessible(reading, 'letters read lately');
  await reading.getByRole('link', { name: her.name }).first().click();
  await expect(reading.getByRole('heading', { level: 1, name: her.name })).toBeVisible();
  await isAccessible(reading, 'her letters');
  await fits(reading);
  await reading
    .getByRole('listitem')
    .filter({ hasText: 'Dr Wenna Ashdown' })
    .getByRole('button', { name: /^Withdraw/ })
    .click();
  await reading.getByRole('button', { name: 'Withdraw it' }).click();
  await expect(reading.getByText('Taken back: it does not count.')).toHaveCount(1);
  await reading.setViewportSize({ width: 360, height: 740 });
  await reading.goto('/letters');
  await fits(reading);
  await context.close();

  // The owner sees who read it, and that nothing was slipped in.
  const office = await browser.newContext({ baseURL: studio.url, viewport: { width: 1280, height: 900 } });
  const owner = await office.newPage();
  await signIn(owner, demo.owner);
  await owner.goto(`/studio/people/${her.clientId}`);
  await expect(owner.getByRole('region', { name: 'Letters' }).getByText('Cannot count, because: It is not signed.', { exact: false })).toBeVisible();
  await isAccessible(owner, 'her letters at the owner’s');
  await owner.getByRole('link', { name: 'Who has seen and changed her record' }).click();
  const row = owner.getByRole('row').filter({ hasText: 'Oda Fennimore' });
  await expect(row.filter({ hasText: 'the file of a letter' }).first()).toContainText('reads letters');
  await expect(row.filter({ hasText: 'changed' }).first()).toContainText(her.name);
  await owner.getByRole('button', { name: 'Check the trail' }).click();
  await expect(owner.getByText(/^The trail is whole\./)).toBeVisible();
  await isAccessible(owner, 'the audit');
  await fits(owner);
  await owner.getByRole('button', { name: 'Everybody’s record' }).click();
  await expect(owner).toHaveURL(/\/studio\/audit$/);
  await office.close();
  forgive(watch, 400);
});

test('the owner reads a paper letter in one go', async ({ page, browser, studio }) => {
  const { people } = await herClass(browser, studio);
  const her = people[1]!;
  await signIn(page, demo.owner);
  await page.goto(`/studio/people/${her.clientId}`);
  await page.getByRole('button', { name: 'Read a paper letter' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Save: it counts' }).click();
  await expect(dialog.getByText('Enter the day it was written.')).toBeVisible();
  await isAccessible(page, 'a paper letter read in one');
  await dialog.getByLabel('Written by').fill('Dr Isaure Kettlewell');
  await type(page, 'Written on', '1 Mar 2027');
  await type(page, 'Its own last day', '1 Jun 2027');
  await dialog.getByLabel('Most effort').fill('4');
  await dialog.getByRole('button', { name: 'Save: it counts' }).click();
  const letter = page.getByRole('region', { name: 'Letters' }).getByRole('listitem').filter({ hasText: 'Dr Isaure Kettlewell' });
  await expect(letter.first()).toContainText('Effort of at most 4 of 10');
});

test('whoever only reads letters finds one by its name, and nobody else', async ({ page, browser, studio }) => {
  const { people } = await herClass(browser, studio);
  const email = await reader(browser, studio, 'Ludo Marchbank');
  await signIn(page, email);
  await expect(page.getByRole('navigation', { name: 'Desks' })).toHaveCount(0);
  await expect(page.getByRole('searchbox')).toHaveCount(0);
  const desk = await asked(browser, studio, demo.desk);
  await desk.request.post(`/api/clients/${people[2]!.clientId}/letters?onPaper=true`);
  await desk.close();
  await page.getByRole('link', { name: 'Find by name' }).click();
  await isAccessible(page, 'finding letters');
  await page.getByLabel('Her name').fill(people[2]!.name.slice(0, 5).toUpperCase());
  await page.getByRole('link', { name: people[2]!.name }).click();
  await expect(page.getByRole('heading', { level: 1, name: people[2]!.name })).toBeVisible();
  await page.goBack();
  await page.getByLabel('Her name').fill('nobody of that name');
  await expect(page.getByText('No letters from anybody by that name')).toBeVisible();
  await page.setViewportSize({ width: 360, height: 740 });
  await fits(page);
  // Another desk's page sends her back to her own.
  await page.goto(`/desk/clients/${people[2]!.clientId}`);
  await expect(page).toHaveURL(/\/letters/);
});

test('the trail goes on beyond its first hundred entries, each once', async ({ page, browser, studio }) => {
  const owner = await asked(browser, studio, demo.owner);
  const { people } = await herClass(browser, studio);
  for (let i = 0; i < 105; i++) await owner.request.get(`/api/clients/${people[0]!.clientId}`);
  await owner.close();
  await signIn(page, demo.owner);
  await page.goto(`/studio/audit?client=${people[0]!.clientId}`);
  const rows = page.getByRole('table').locator('tbody tr');
  await expect(rows).toHaveCount(100);
  await page.getByRole('button', { name: 'Show earlier ones' }).click();
  await expect.poll(() => rows.count()).toBeGreaterThan(100);
  while (await page.getByRole('button', { name: 'Show earlier ones' }).isVisible()) {
    const before = await rows.count();
    await page.getByRole('button', { name: 'Show earlier ones' }).click();
    await expect.poll(() => rows.count()).toBeGreaterThanOrEqual(before);
  }
  await expect(page.getByText('These are all.')).toBeVisible();
  const numbers = (await rows.locator('td:last-child').allTextContents()).map(Number);
  expect(new Set(numbers).size).toBe(numbers.length);
  expect([...numbers].sort((a, b) => b - a)).toEqual(numbers);
});

test('the owner gives a role and takes it, but never the last owner’s', async ({ page, watch }) => {
  await signIn(page, demo.owner);
  await page.getByRole('link', { name: 'Staff' }).click();
  const accounts: { email: string; name: string }[] = await (await page.request.get('/api/accounts')).json();
  const nameOf = (email: string) => accounts.find((account) => account.email === email)!.name;
  const dialog = page.getByRole('dialog');
  const change = async (email: string, role: string) => {
    await page.getByRole('button', { name: `Change what ${nameOf(email)} may do` }).click();
    await dialog.getByRole('checkbox', { name: role }).click();
    await dialog.getByRole('button', { name: 'Save' }).click();
  };
  const line = page.getByRole('listitem').filter({ hasText: demo.desk });
  await change(demo.desk, 'Reads letters');
  await expect(line).toContainText('reads letters, front desk');
  await change(demo.desk, 'Reads letters');
  await expect(line).not.toContainText('reads letters');

  await page.getByRole('button', { name: `Change what ${nameOf(demo.owner)} may do` }).click();
  await dialog.getByRole('checkbox', { name: 'Front desk' }).click();
  await dialog.getByRole('checkbox', { name: 'Owner' }).click();
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog.getByText(/This is the only owner/)).toBeVisible();
  await isAccessible(page, 'a role that cannot be taken');
  forgive(watch, 409);
});

for (const [who, path] of [
  [demo.owner, '/studio/people'],
  [demo.desk, '/desk/clients'],
  [demo.client, '/my'],
] as const)
  test(`the letter to her clinician is one page for ${who}`, async ({ page, browser, studio }) => {
    const { people } = await herClass(browser, studio);
    await signIn(page, who);
    await page.goto(path === '/my' ? '/my/letters/request' : `${path}/${people[2]!.clientId}/letters/request`);
    const sheet = page.locator('[data-sheet=request]');
    await expect(sheet).toContainText('Signature');
    await isAccessible(page, 'the letter to her clinician');
    await fits(page);
    await picture(page, 'request-letter');
    for (const format of ['A4', 'Letter'] as const) {
      const pdf = (await page.pdf({ format, preferCSSPageSize: true })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g), `pages of ${format}`).toHaveLength(1);
    }
    // Nothing of it is cut off, and it can be read.
    const room = await sheet.evaluate((e) => ({
      over: e.scrollHeight - e.parentElement!.clientHeight,
      wide: e.scrollWidth - e.parentElement!.clientWidth,
      points: parseFloat((e as HTMLElement).style.fontSize),
    }));
    expect(room.over).toBeLessThanOrEqual(0);
    expect(room.wide).toBeLessThanOrEqual(0);
    expect(room.points, 'type in points').toBeGreaterThanOrEqual(7);
    await page.setViewportSize({ width: 360, height: 740 });
    await fits(page);
  });
