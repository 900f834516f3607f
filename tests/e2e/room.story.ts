// In the room: class mode on a tablet, with and without a connection; notes afterwards; everybody at a glance and on paper.
import type { Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, picture, signIn, test } from './studio.ts';

interface Seated {
  clientId: number;
  bookingId: number;
  called: string;
  checkedInAt?: string | null;
  movements: { position: number; verdict: string; instruction: string }[];
}
interface Roster {
  session: { id: number; on: string; className: string };
  plan: { position: number; name: string; minutes: number }[];
  people: Seated[];
}

const tablet = { width: 1024, height: 768 };

const rosterOf = async (page: Page, id: number): Promise<Roster> =>
  (await page.request.get(`/api/sessions/${id}/roster`)).json();

/** Her sessions between two days, as the server has them. */
const sessionsOf = async (page: Page, from: string, to: string): Promise<{ id: number; on: string }[]> =>
  (await page.request.get(`/api/sessions?from=${from}&to=${to}&mine=true`)).json();

/** A page that lost its connection says so on the console too; that is no fault of ours. */
const forgive = (watch: { errors: string[] }) => {
  const ours = watch.errors.filter((e) => !/ERR_INTERNET_DISCONNECTED|ERR_NETWORK|Failed to fetch/.test(e));
  watch.errors.splice(0, watch.errors.length, ...ours);
};

test('teaches from a tablet, one key forward and one back', async ({ page }) => {
  await page.setViewportSize(tablet);
  await signIn(page, demo.instructor);
  await page.getByRole('link', { name: 'Class mode' }).click();
  await expect(page).toHaveURL(/\/class$/);
  await expect(page.getByRole('banner').getByRole('heading', { level: 1 })).toBeVisible();
  const roster = await rosterOf(page, Number(/sessions\/(\d+)/.exec(page.url())![1]));
  const now = page.getByRole('region', { name: 'The movement now' });
  const who = page.getByRole('region', { name: 'Who does what' });
  await expect(now.getByRole('heading')).toHaveText(roster.plan[0]!.name);

  await page.keyboard.press('Space');
  await expect(now.getByRole('heading')).toHaveText(roster.plan[1]!.name);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('PageDown');
  await expect(now.getByRole('heading')).toHaveText(roster.plan[3]!.name);
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('PageUp');
  await expect(now.getByRole('heading')).toHaveText(roster.plan[1]!.name);
  await page.getByRole('button', { name: 'Next' }).click();
  await expect(now.getByRole('heading')).toHaveText(roster.plan[2]!.name);
  await expect(now).toContainText(`0 of ${roster.plan[2]!.minutes} min`);
  await expect(now).toContainText(`Next: ${roster.plan[3]!.name}`);

  // Somebody does something else: what and who can be read from two metres.
  await page.getByRole('button', { name: 'All movements' }).click();
  await page.getByRole('dialog').getByRole('button', { name: /Hip circles on all fours/ }).click();
  await expect(now.getByRole('heading')).toHaveText('Hip circles on all fours');
  const instruction = who.getByText('fists, forearms or a wedge');
  await expect(instruction).toBeVisible();
  const pixels = await instruction.evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
  expect(pixels, 'type of an instruction, in pixels').toBeGreaterThanOrEqual(28);
  await expect(who).toContainText(`${roster.people.length - 1} as taught`);
  await isAccessible(page, 'class mode');
  await fits(page);
  await picture(page, 'class-mode');

  // What to mind about one person, with the way to stop her, and back to the same place.
  await who.getByRole('button', { name: /^Nayeli/ }).click();
  await expect(page.getByRole('dialog', { name: 'Nayeli' })).toContainText('In an emergency');
  await expect(page.getByRole('button', { name: 'Warning sign' })).toBeVisible();
  await isAccessible(page, 'one person in class mode');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(now.getByRole('heading')).toHaveText('Hip circles on all fours');

  await page.keyboard.press('Escape');
  await expect(page).toHaveURL(/\/teach\/sessions\/\d+$/);
});

test('keeps its place when somebody is checked in elsewhere', async ({ page, browser, studio }) => {
  await page.setViewportSize(tablet);
  await signIn(page, demo.instructor);
  await page.getByRole('link', { name: 'Class mode' }).click();
  await page.keyboard.press('ArrowRight');
  const heading = page.getByRole('region', { name: 'The movement now' }).getByRole('heading');
  const name = await heading.textContent();
  const roster = await rosterOf(page, Number(/sessions\/(\d+)/.exec(page.url())![1]));
  const before = roster.people.filter(({ checkedInAt }) => checkedInAt).length;
  await expect(page.getByRole('banner')).toContainText(`${before} of `);

  const desk = await browser.newContext({ baseURL: studio.url });
  const post = await desk.request.post('/api/session', { data: { email: demo.desk, password: demo.password } });
  expect(post.ok()).toBe(true);
  const absent = roster.people.find(({ checkedInAt }) => !checkedInAt)!;
  const here = `/api/bookings/${absent.bookingId}/check-in`;
  expect((await desk.request.post(here, { data: { answer: 'allWell' } })).status()).toBe(204);
  await expect(page.getByRole('banner')).toContainText(`${before + 1} of `);
  await expect(heading).toHaveText(name!);
  expect((await desk.request.delete(here)).status()).toBe(204);
  await desk.close();
});

test('goes on without a connection, and sends the note when it is back', async ({ page, context, browser, studio, watch }) => {
  await page.setViewportSize(tablet);
  await signIn(page, demo.instructor);
  // The class of the evening before: notes about it may be written, and one of its people comes again.
  const [past] = (await sessionsOf(page, '2027-03-01', '2027-03-02')).slice(-1);
  const taught = await rosterOf(page, past!.id);
  const ahead = await Promise.all(
    (await sessionsOf(page, '2027-03-03', '2027-03-16')).map(({ id }) => rosterOf(page, id)),
  );
  const pair = taught.people
    .flatMap((her) => ahead.map((roster) => ({ her, roster })))
    .find(({ her, roster }) => roster.people.some(({ clientId }) => clientId === her.clientId))!;
  expect(pair, 'somebody of yesterday’s class comes again').toBeTruthy();

  await page.goto(`/teach/sessions/${past!.id}/class`);
  const heading = page.getByRole('region', { name: 'The movement now' }).getByRole('heading');
  await expect(heading).toHaveText(taught.plan[0]!.name);
  // The page fetched the way out as well before the connection goes.
  await page.waitForLoadState('networkidle', { timeout: 3_000 }).catch(() => undefined);
  await context.setOffline(true);
  await expect(page.getByText(/^No connection\. This is the roster as of \d\d:\d\d; changes made elsewhere are not shown\.$/)).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(heading).toHaveText(taught.plan[1]!.name);
  await page.getByRole('button', { name: 'All movements' }).click();
  await page.getByRole('dialog').getByRole('button', { name: new RegExp(`^3\\. `) }).click();
  await expect(heading).toHaveText(taught.plan[2]!.name);
  await page.getByRole('region', { name: 'Who does what' }).getByRole('button').first().click();
  await expect(page.getByRole('dialog')).toContainText('What to do differently');
  await page.keyboard.press('Escape');
  await isAccessible(page, 'class mode without a connection');

  await page.getByRole('button', { name: 'Notes', exact: true }).click();
  const field = page.getByRole('textbox', { name: new RegExp(`^${pair.her.called}`) });
  const words = 'Held the wall for balance; slower turns went well.';
  await field.fill(words);
  await expect(page.getByText('Not saved yet')).toBeVisible();
  await page.getByRole('button', { name: `Save the note about ${pair.her.called}` }).click();
  await expect(page.getByText('Not sent yet: kept on this device until the connection is back.')).toBeVisible();
  // Out and in again: what was written is still there.
  await page.getByRole('button', { name: 'Back' }).click();
  await page.getByRole('button', { name: 'Notes after class' }).click();
  await expect(field).toHaveValue(words);
  expect(await page.evaluate(() => JSON.stringify({ ...localStorage })), 'kept for good on the device').not.toContain('balance');

  await context.setOffline(false);
  await expect(page.getByText(/^No connection/)).toHaveCount(0);
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  await isAccessible(page, 'notes after class');
  expect(await page.evaluate(() => sessionStorage.getItem('studio.note-drafts'))).toBeNull();

  // Whoever has her next reads it: a mark on the mat, the words in the details.
  await page.goto(`/teach/sessions/${pair.roster.session.id}`);
  const mat = page.getByRole('grid', { name: /The floor/ }).getByRole('button', { name: new RegExp(`^${pair.her.called}`) });
  await expect(mat).toContainText('1 note');
  await mat.click();
  await expect(page.getByRole('complementary', { name: pair.her.called })).toContainText(words);
  await isAccessible(page, 'a note in the details');

  // The owner reads it on her page and takes it back; the desk's roster never had it.
  const desk = await browser.newContext({ baseURL: studio.url });
  await desk.request.post('/api/session', { data: { email: demo.desk, password: demo.password } });
  expect(await (await desk.request.get(`/api/sessions/${pair.roster.session.id}/roster`)).text()).not.toContain('balance');
  await desk.close();
  const other = await browser.newContext({ baseURL: studio.url });
  const owner = await other.newPage();
  await signIn(owner, demo.owner);
  await owner.goto(`/studio/people/${pair.her.clientId}`);
  await owner.getByRole('button', { name: 'Notes after class' }).click();
  await expect(owner.getByText(words)).toBeVisible();
  await isAccessible(owner, 'her notes at the owner’s');
  await owner.getByRole('button', { name: /^Withdraw the note/ }).click();
  await expect(owner.getByText('Nothing has been noted.')).toBeVisible();
  await other.close();
  forgive(watch);
});

test('a server that cannot be reached is said at the top of every page, until it is back', async ({ page, context, watch }) => {
  await signIn(page, demo.instructor);
  await context.setOffline(true);
  const line = page.getByText(/^The studio’s server cannot be reached\./);
  await expect(line).toBeVisible();
  await isAccessible(page, 'without the server');
  await context.setOffline(false);
  await expect(line).toHaveCount(0);
  forgive(watch);
});

for (const [width, height] of [[1280, 900], [360, 740]] as const)
  test(`sees the whole class at ${width} pixels`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await signIn(page, demo.instructor);
    await page.getByRole('radiogroup', { name: 'The class as' }).getByText('Whole class').click();
    const table = page.getByRole('table');
    const rows = await table.getByRole('row').count();
    await expect(table.getByRole('columnheader').nth(1)).toContainText(/\d+w \dd/);
    await page.getByRole('region', { name: /Who does what/ }).focus();
    await page.getByRole('rowheader', { name: /Hip circles on all fours/ }).getByRole('button').click();
    await expect(table.locator('[aria-current=step]')).toHaveText(/Hip circles on all fours/);
    await expect(table).toContainText('fists, forearms or a wedge');
    await isAccessible(page, `the whole class at ${width}`);
    await fits(page);
    await page.getByRole('switch', { name: 'Only what differs' }).click();
    expect(await table.getByRole('row').count()).toBeLessThan(rows);
    await picture(page, `whole-class-${width}`);
  });

const letterWords = 'By her letter: rests when she asks to and stays within reach of the wall';

for (const [people, movements, letters] of [[8, 10, 'short'], [20, 16, 'short'], [20, 16, 'long']] as const)
  test(`prints who does what for ${people} people and ${movements} movements on one page, with ${letters} letters`, async ({ page }) => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.addInitScript(() => {
      window.print = () => undefined;
    });
    // The demo's own roster, made as large as a room gets, with words as long as the rules have them.
    await page.route('**/api/sessions/*/roster', async (route) => {
      const roster = (await (await route.fetch()).json()) as Roster;
      const plan = Array.from({ length: movements }, (_, i) => ({ ...roster.plan[i % roster.plan.length]!, position: i + 1 }));
      const seated = Array.from({ length: people }, (_, i) => ({
        ...roster.people[i % roster.people.length]!,
        bookingId: 90_000 + i,
        instructions: [
          ...(letters === 'long' ? [{ text: `${letterWords} ${i}. ${'Slower than the others, with a pause after each side. '.repeat(8)}`, source: null }] : []),
          ...(letters === 'short' && i % 3 === 0 ? [{ text: `${letterWords} ${i}.`, source: null }] : []),
          ...(i % 4 === 0 ? [{ text: 'By her letter: heart rate at most 138 a minute.', source: null }] : []),
        ],
        movements: plan.map(({ position, name }) =>
          (position + i) % 3 === 0
            ? { position, name, verdict: 'replaced', option: name, instruction: `Side plank instead: knee down, slower, ${(position * i) % 9} breaths`, reasons: [] }
            : (position * i) % 4 === 0
              ? { position, name, verdict: 'adapted', instruction: 'propped up, not flat; a hand at the wall', reasons: [] }
              : { position, name, verdict: 'asTaught', instruction: '', reasons: [] },
        ),
      }));
      await route.fulfill({ json: { ...roster, plan, people: seated } });
    });
    await signIn(page, demo.instructor);
    await expect(page.getByRole('grid', { name: /The floor/ }).getByRole('button')).toHaveCount(people);
    for (const format of ['A4', 'Letter'] as const) {
      await page.getByRole('button', { name: 'Print' }).click();
      await page.getByRole('menuitem', { name: /on one page/ }).click();
      const sheet = page.locator('[data-points]');
      await expect(sheet).toHaveCount(1);
      const points = Number(await sheet.getAttribute('data-points'));
      expect(points, 'type in points').toBeGreaterThanOrEqual(people === 8 ? 8 : 6.5);
      const pdf = (await page.pdf({ format, preferCSSPageSize: true })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g), `pages of ${format}`).toHaveLength(1);
      const [, wide, high] = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf)!;
      expect(Number(wide), 'on its side').toBeGreaterThan(Number(high));
    }
    // Nothing of it is cut off: all fits into what both papers have.
    await page.getByRole('button', { name: 'Print' }).click();
    await page.getByRole('menuitem', { name: /on one page/ }).click();
    await page.emulateMedia({ media: 'print' });
    const room = await page.locator('[data-points]').evaluate((sheet) => ({
      over: sheet.scrollHeight - sheet.parentElement!.clientHeight,
      wide: sheet.scrollWidth - sheet.parentElement!.clientWidth,
      ages: (sheet.textContent ?? '').match(/\d+w \dd/g)?.length ?? 0,
      text: sheet.textContent ?? '',
    }));
    expect(room.over).toBeLessThanOrEqual(0);
    expect(room.wide).toBeLessThanOrEqual(0);
    expect(room.ages).toBeGreaterThan(people / 2);
    // What her letter says is there, or the sheet says whose letter to read on the roster.
    if (letters === 'long') expect(room.text).toContain('All through the class, in words on the roster:');
    else for (let i = 0; i < people; i += 3) expect(room.text).toContain(`${letterWords} ${i}.`);
  });

test('prints the roster as before', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.addInitScript(() => {
    window.print = () => undefined;
  });
  await signIn(page, demo.instructor);
  await page.getByRole('button', { name: 'Print' }).click();
  await page.getByRole('menuitem', { name: 'Roster' }).click();
  const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
});
