// Warning signs: raised by herself on a telephone, in class mode, at the door; read and added to by the owner; lifted by a letter.
import type { Browser, Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, picture, signIn, test, type Studio } from './studio.ts';

interface Seated {
  clientId: number;
  bookingId: number;
  called: string;
  name: string;
  checkedInAt?: string | null;
  verdict: string;
}

const today = '2027-03-03';

/** Today's class of the demo's instructor, with those of its people who may take part. */
const todaysClass = async (page: Page): Promise<{ id: number; people: Seated[] }> => {
  const sessions: { id: number }[] = await (
    await page.request.get(`/api/sessions?from=${today}&to=${today}&mine=true`)
  ).json();
  const rosters = await Promise.all(
    sessions.map(async ({ id }) => (await page.request.get(`/api/sessions/${id}/roster`)).json()),
  );
  const roster = rosters.sort((a, b) => b.people.length - a.people.length)[0];
  const fit = (roster.people as Seated[]).filter(
    ({ verdict, checkedInAt }) => verdict !== 'notSuitable' && verdict !== 'needsClearance' && !checkedInAt,
  );
  expect(fit.length, 'people who may take part').toBeGreaterThanOrEqual(3);
  return { id: roster.session.id, people: fit };
};

const another = async (browser: Browser, studio: Studio, email: string, viewport = { width: 1280, height: 900 }) => {
  const context = await browser.newContext({ baseURL: studio.url, viewport, reducedMotion: 'reduce' });
  const page = await context.newPage();
  await signIn(page, email);
  return page;
};

test('she says on her phone that something is not right: what to do comes first, one press is not enough', async ({ page, browser, studio }) => {
  const owner = await another(browser, studio, demo.owner);
  // Somebody with an account of her own, so that the demo's client keeps her classes.
  const found: { id: number; name: string }[] = await (await owner.request.get('/api/clients?find=a')).json();
  const cards = await Promise.all(
    found.map(async ({ id }) => (await owner.request.get(`/api/clients/${id}`)).json()),
  );
  const her = cards.find((card) => !card.hasAccount && !card.onHold && card.phase === 'pregnant');
  expect(her, 'somebody without an account').toBeTruthy();
  const email = 'her.own.telephone@demo.example';
  const made = await owner.request.post('/api/accounts', {
    data: { email, name: her.name, password: demo.password, roles: ['client'], clientId: her.id, instructorId: null },
  });
  expect(made.status()).toBe(201);

  await page.setViewportSize({ width: 360, height: 740 });
  await signIn(page, email);
  await page.getByRole('link', { name: 'Something is not right' }).click();
  const now = page.getByRole('region', { name: 'First, now' });
  await expect(now.getByRole('link', { name: '112' })).toHaveAttribute('href', 'tel:112');
  await expect(now).toContainText('midwife');
  await isAccessible(page, 'something is not right');
  await fits(page);
  await picture(page, 'something-is-not-right');
  await page.getByRole('checkbox', { name: /^Bleeding from the vagina/ }).check();
  await page.getByRole('textbox', { name: /In your own words/ }).fill('Since this morning, a little.');

  // A slip holds nothing: it is asked once more, and going back keeps what was written.
  const hold = page.getByRole('button', { name: /^Hold my bookings/ });
  await hold.click();
  await isAccessible(page, 'asked once more');
  await page.getByRole('button', { name: 'Go back' }).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect((await (await owner.request.get(`/api/clients/${her.id}`)).json()).onHold).toBe(false);
  await expect(page.getByRole('textbox', { name: /In your own words/ })).toHaveValue('Since this morning, a little.');
  await hold.click();
  // Twice in one breath: one entry.
  await page.getByRole('button', { name: 'Yes, hold my bookings' }).dblclick();
  await expect(page.getByRole('alert')).toContainText('Your bookings rest now');
  await expect(page.getByRole('alert').getByRole('link', { name: '112' }).first()).toBeVisible();
  await isAccessible(page, 'her bookings rest');
  await fits(page);
  const entries = await (await owner.request.get(`/api/incidents?client=${her.id}`)).json();
  expect(entries).toHaveLength(1);
  expect(entries[0]).toMatchObject({ raisedBy: her.name, happened: 'Since this morning, a little.', holdStands: true });
  await page.getByRole('button', { name: 'Done' }).click();
  await expect(page.getByRole('region', { name: 'What we need from you' })).toContainText('paused');
  await owner.context().close();
});

test('at the door and in class; the owner reads it, adds to it, and a renewed letter lifts it', async ({ page, browser, studio, watch }) => {
  test.setTimeout(90_000);
  // The desk: one tap for all well, one for something.
  const teacher = await another(browser, studio, demo.instructor, { width: 1024, height: 768 });
  const { id: session, people } = await todaysClass(teacher);
  const [well, unwell, inClass] = people as [Seated, Seated, Seated];
  await page.setViewportSize({ width: 1280, height: 900 });
  await signIn(page, demo.desk);
  await page.goto(`/desk?session=${session}`);
  const roster = page.getByRole('region', { name: 'Roster' });
  await roster.getByRole('button', { name: `${well.name}: all well, check in` }).click();
  await expect(roster.getByRole('button', { name: `${well.name}: here, all well` })).toBeVisible();
  await roster.getByRole('button', { name: `${inClass.name}: more` }).click();
  await page.getByRole('menuitem', { name: /not asked/ }).click();
  await expect(roster.getByRole('button', { name: `${inClass.name}: here, not asked` })).toBeVisible();
  await isAccessible(page, 'who is here, and who was asked');

  await roster.getByRole('button', { name: `${unwell.name}: not well` }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('checkbox', { name: 'Dizzy or faint', exact: true }).check();
  await dialog.getByLabel('What happened').fill('Pale at the door.');
  await isAccessible(page, 'a warning sign at the door');
  await dialog.getByRole('button', { name: 'Stop, and hold everything' }).dblclick();
  await expect(dialog.getByRole('alert')).toContainText('is on hold');
  await isAccessible(page, 'stop, and whom to call');
  await dialog.getByRole('button', { name: 'Done' }).click();
  // Held means not let in, and the desk is told why in its own words.
  await roster.getByRole('button', { name: `${unwell.name}: all well, check in` }).click();
  await expect(page.getByText(/Her bookings are on hold/).first()).toBeVisible();
  await expect(roster.getByText('Pale at the door.')).toHaveCount(0);

  // The instructor sees who was not asked, asks her, and later stops her.
  await teacher.goto(`/teach/sessions/${session}/class`);
  const who = teacher.getByRole('region', { name: 'Who does what' });
  const name = who.getByRole('button', { name: new RegExp(`^${inClass.called}`) }).first();
  await expect(name.getByRole('img', { name: 'here, not asked how she is' })).toBeVisible();
  await name.click();
  const inRoom = teacher.getByRole('dialog');
  await inRoom.getByRole('button', { name: `${inClass.name}: all well` }).click();
  await expect(inRoom.getByRole('button', { name: `${inClass.name}: here, all well` })).toBeVisible();
  await inRoom.getByRole('button', { name: `${inClass.name}: warning sign` }).click();
  await teacher.getByLabel('What was done').fill('Sat down, water, her sister was called.');
  await teacher.getByRole('button', { name: 'Stop, and hold everything' }).dblclick();
  await expect(teacher.getByRole('alert')).toContainText(`${inClass.called} is on hold`);
  await isAccessible(teacher, 'a warning sign in class mode');
  await teacher.getByRole('button', { name: 'Done' }).click();
  await teacher.context().close();

  // The owner: newest first, each once, and what came later stands under it.
  const owner = await another(browser, studio, demo.owner);
  await owner.getByRole('link', { name: 'Incidents' }).click();
  const list = owner.getByRole('list', { name: 'Entries, the newest first' });
  await expect(list.getByRole('heading', { level: 2 }).first()).toHaveText(inClass.name);
  const entry = list.locator(':scope > li').filter({ hasText: unwell.name });
  await expect(entry).toHaveCount(1);
  await expect(entry).toContainText('Dizzy or faint');
  await expect(entry).toContainText('Pale at the door.');
  await expect(entry).toContainText('The hold stands since 3 March 2027');
  await expect(entry).toContainText('Lisbon time');
  await isAccessible(owner, 'incidents');
  await fits(owner);
  await picture(owner, 'incidents');
  await entry.getByRole('button', { name: /^Add to the entry/ }).click();
  await owner.getByLabel('What became known').fill('Her midwife saw her the same day.');
  await isAccessible(owner, 'adding to an entry');
  await owner.getByRole('button', { name: 'Add it' }).click();
  await expect(entry.getByText('Her midwife saw her the same day.')).toBeVisible();
  await owner.getByLabel('Her name').fill('nobody of that name');
  await expect(owner.getByText('No entry for what you search')).toBeVisible();
  await owner.getByLabel('Her name').fill(unwell.name);
  await expect(list.locator(':scope > li')).toHaveCount(1);
  await entry.getByRole('link', { name: /3 March 2027/ }).click();
  await expect(list.locator(':scope > li')).toHaveCount(2);
  await owner.setViewportSize({ width: 360, height: 740 });
  await fits(owner);
  await isAccessible(owner, 'incidents on a telephone');
  await owner.setViewportSize({ width: 1280, height: 900 });
  await owner.emulateMedia({ media: 'print' });
  await expect(owner.getByRole('button', { name: 'Print' })).toBeHidden();
  await expect(entry.getByText('Pale at the door.')).toBeVisible();
  await owner.emulateMedia({ media: 'screen' });

  // A letter written that day lifts it, once it is read.
  await entry.getByRole('link', { name: unwell.name }).click();
  await owner.getByRole('button', { name: 'Read a paper letter' }).click();
  const reading = owner.getByRole('dialog');
  await reading.getByLabel('Written by').fill('Dr Wenna Ashdown');
  for (const [label, day] of [['Written on', '3 Mar 2027'], ['Its own last day', '1 Jun 2027']] as const) {
    await reading.getByRole('textbox', { name: label, exact: true }).fill(day);
    await owner.keyboard.press('Tab');
  }
  await reading.getByLabel('In words for the instructor').fill('Rests when she asks to.');
  await reading.getByLabel('Most effort').fill('4');
  await reading.getByRole('button', { name: 'Save: it counts' }).click();
  await expect(owner.getByRole('dialog')).toHaveCount(0);
  await owner.getByRole('link', { name: 'Warning signs and what was done' }).click();
  await expect(entry).toContainText('lifted on 3 March 2027');
  await owner.context().close();
  await roster.getByRole('button', { name: `${unwell.name}: all well, check in` }).click();
  await expect(roster.getByRole('button', { name: `${unwell.name}: here, all well` })).toBeVisible();

  // Her letter’s words and ceiling stand in the room, large, whatever the movement.
  const room = await another(browser, studio, demo.instructor, { width: 1024, height: 768 });
  await room.goto(`/teach/sessions/${session}/class`);
  const always = room.getByRole('region', { name: 'All through the class' });
  for (const words of ['By her letter: Rests when she asks to.', 'By her letter: effort at most 4 of 10.']) {
    const line = always.getByText(words);
    await expect(line).toBeVisible();
    expect(await line.evaluate((e) => parseFloat(getComputedStyle(e).fontSize))).toBeGreaterThanOrEqual(28);
  }
  await isAccessible(room, 'words of a letter in class mode');
  await fits(room);
  await room.context().close();
  watch.errors.splice(0, watch.errors.length, ...watch.errors.filter((e) => !e.includes('status of 409')));
});
