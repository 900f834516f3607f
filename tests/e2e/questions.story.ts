// The health questions and the letters: on her own phone, and on a tablet of the desk that is handed to her.
import { deflateSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { demo, expect, fits, isAccessible, signIn, test } from './studio.ts';

const phone = { viewport: { width: 360, height: 740 }, hasTouch: true };

const goOn = (page: Page) => page.getByRole('button', { name: 'Go on', exact: true }).click();
const none = (page: Page) => page.getByRole('button', { name: /^None of/ }).click();
const heading = (page: Page, name: string) => expect(page.getByRole('heading', { level: 2, name, exact: true })).toBeVisible();

/** From the agreement to the first list. */
async function agree(page: Page): Promise<void> {
  await heading(page, 'Before you begin');
  await page.getByRole('checkbox', { name: /^I agree/ }).check();
  await goOn(page);
  await heading(page, 'Your dates');
  await page.getByRole('checkbox', { name: 'The dates on my page are right.' }).check();
  await goOn(page);
  await heading(page, 'Today');
}

/** From the second list to the end, with nothing that is so. */
async function nothingElse(page: Page): Promise<void> {
  for (const section of ['Until now', 'Your health', 'How your body is now']) {
    await heading(page, section);
    await none(page);
    await goOn(page);
  }
  await heading(page, 'In an emergency');
  await page.getByRole('checkbox', { name: /^The person we call/ }).check();
}

test.describe('on her phone', () => {
  test.use(phone);

  // Before she answers: with some answers no heart rate is told, only what she can still say.
  test('reads who looked at her record, and gives her date of birth for the heart rate', async ({ page }) => {
    await signIn(page, demo.client);
    await page.getByRole('link', { name: 'About me' }).click();
    await page.getByRole('button', { name: 'Who looked at my record' }).click();
    await expect(page.getByText('You read: your page').first()).toBeVisible();
    const born = page.getByLabel('My date of birth');
    await born.fill('4 May 1995');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await expect(page.getByText('Saved.')).toBeVisible();
    await isAccessible(page, 'about me, with who looked');
    await fits(page);
    await page.getByRole('link', { name: 'Classes', exact: true }).click();
    await expect(page.getByText(/beats a minute/)).toBeVisible();
    await page.getByRole('button', { name: 'Where this stands' }).click();
    await isAccessible(page, 'how hard it may feel');
    await fits(page);
  });

  test('answers, goes on after a reload, and reads what came of it and why', async ({ page }) => {
    await signIn(page, demo.client);
    await page.getByRole('link', { name: 'Questions', exact: true }).click();
    await expect(page.getByText('Nothing is kept before you agree.')).toBeVisible();
    await isAccessible(page, 'the first question');
    await agree(page);

    // Nothing is answered no by itself.
    await goOn(page);
    await expect(page.getByRole('alert')).toContainText('still open');
    await page.getByRole('checkbox', { name: 'Dizziness or faintness?', exact: true }).check();
    await page.getByRole('checkbox', { name: 'Dizziness or faintness?', exact: true }).uncheck();
    await isAccessible(page, 'a list to tick');
    await fits(page);
    await none(page);
    await expect(page.getByText('Every question here is answered.')).toBeVisible();
    await goOn(page);
    await heading(page, 'Until now');
    await none(page);
    await goOn(page);
    await heading(page, 'Your health');
    await page.getByRole('checkbox', { name: /^Not sure: .*anaemia/ }).check();
    await expect(page.getByText('Saved. You can stop here')).toBeVisible();

    await page.reload();
    await heading(page, 'Your health');
    await expect(page.getByRole('checkbox', { name: /^Not sure: .*anaemia/ })).toBeChecked();
    expect(await page.evaluate(() => JSON.stringify([{ ...localStorage }, { ...sessionStorage }]))).not.toContain('anaemia');
    await none(page);
    await goOn(page);
    await heading(page, 'How your body is now');
    await page.getByRole('checkbox', { name: 'Does your back hurt?', exact: true }).check();
    await page.getByRole('button', { name: 'Say since when: Does your back hurt?' }).click();
    await page.getByLabel('Since: Does your back hurt?').fill('1 Feb 2027');
    await page.keyboard.press('Tab');
    await none(page);
    await goOn(page);
    await heading(page, 'In an emergency');

    // Sent too early it stays, and says what is open.
    await page.getByRole('button', { name: 'Send my answers' }).click();
    await expect(page.getByRole('alert')).toContainText('1 question here is still open.');
    await page.getByRole('checkbox', { name: /^The person we call/ }).check();
    await page.getByRole('button', { name: 'Send my answers' }).click();
    await expect(page.getByRole('heading', { name: 'Your answers are with us' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Why' })).toBeVisible();
    await expect(page.locator('main')).toContainText(/anaemia/);
    await isAccessible(page, 'what came of it');
    await fits(page);
    await page.getByRole('link', { name: 'My letters' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'My letters' })).toBeVisible();
  });

  test('with a warning sign her bookings rest, and the number to call stands there', async ({ page }) => {
    await signIn(page, demo.client);
    await page.getByRole('link', { name: 'Questions', exact: true }).click();
    await agree(page);
    await page.getByRole('checkbox', { name: 'Fluid leaking from the vagina?', exact: true }).check();
    await none(page);
    await goOn(page);
    await nothingElse(page);
    await page.getByRole('button', { name: 'Send my answers' }).click();
    await expect(page.getByText(/Your bookings rest, at no charge/)).toBeVisible();
    await expect(page.getByText(/If it is bad or sudden, call/).getByRole('link', { name: '112' })).toHaveAttribute('href', 'tel:112');
    await isAccessible(page, 'a warning sign');
    await page.getByRole('link', { name: 'Classes', exact: true }).click();
    await expect(page.getByRole('region', { name: 'What we need from you' })).toContainText('paused');
  });

  test('sends a photograph of her letter; what is no letter is refused in words', async ({ page, watch }) => {
    await signIn(page, demo.client);
    await page.getByRole('link', { name: 'Letters', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Letters so far' })).toBeVisible();
    await expect(page.getByLabel('Loading')).toHaveCount(0);
    const before = await page.getByRole('region', { name: 'Letters so far' }).getByRole('listitem').count();
    const file = page.locator('input[type=file]').last();
    await file.setInputFiles({ name: 'letter.pdf', mimeType: 'application/pdf', buffer: Buffer.from('only some words') });
    await expect(page.getByRole('alert')).toContainText('This is no PDF, JPEG or PNG');
    await isAccessible(page, 'a refused file');
    await file.setInputFiles({ name: 'letter.png', mimeType: 'image/png', buffer: png() });
    await expect(page.getByText('Waiting to be read. It counts once somebody has read it.')).toBeVisible();
    await expect(page.getByRole('alert')).toHaveCount(0);
    await expect(page.getByRole('region', { name: 'Letters so far' }).getByRole('listitem')).toHaveCount(before + 1);
    const href = await page.getByRole('link', { name: 'Open the picture' }).first().getAttribute('href');
    expect((await page.request.get(href!)).headers()['content-type']).toBe('image/png');
    await isAccessible(page, 'her letters');
    await fits(page);
    await page.getByRole('link', { name: 'A page to print and take along' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Letter to your clinician' })).toBeVisible();
    await expect(page.getByRole('main')).toContainText('Leonor Castrovide');
    await isAccessible(page, 'what she takes to her clinician');
    await fits(page);
    // The browser itself notes the 400 on its console.
    watch.errors.splice(0, watch.errors.length, ...watch.errors.filter((e) => !e.includes('400')));
  });
});

test.describe('on her phone, when something comes in between', () => {
  test.use(phone);

  test('a photograph straight from the camera is sent as a plain picture', async ({ page }) => {
    await signIn(page, demo.client);
    await page.getByRole('link', { name: 'Letters', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Letters so far' })).toBeVisible();
    await expect(page.getByLabel('Loading')).toHaveCount(0);
    const photo = await page.screenshot({ type: 'jpeg' });
    // As telephones make them: with something behind the end of the picture.
    const tail = Buffer.from('a short film behind it');
    const before = await page.getByRole('region', { name: 'Letters so far' }).getByRole('listitem').count();
    await page
      .locator('input[type=file]')
      .first()
      .setInputFiles({ name: 'IMG_0001.jpg', mimeType: 'image/jpeg', buffer: Buffer.concat([photo, tail]) });
    const letters = page.getByRole('region', { name: 'Letters so far' }).getByRole('listitem');
    await expect(letters).toHaveCount(before + 1);
    const href = await page.getByRole('link', { name: 'Open the picture' }).first().getAttribute('href');
    const kept = await page.request.get(href!);
    expect(kept.headers()['content-type']).toBe('image/jpeg');
    expect((await kept.body()).includes(tail)).toBe(false);
  });

  test('the questions change while she answers: what is still asked stays answered', async ({ page, watch }) => {
    await signIn(page, demo.client);
    await page.getByRole('link', { name: 'Questions', exact: true }).click();
    await agree(page);
    await page.getByRole('checkbox', { name: /^Not sure: Dizziness/ }).check();
    // The studio's rules are put in force anew meanwhile: the server says so once, and asks what it asks now.
    let told = 0;
    await page.route('**/screening/draft', async (route) => {
      if (route.request().method() === 'PUT' && told++ === 0)
        await route.fulfill({
          status: 409,
          contentType: 'application/problem+json',
          json: { status: 409, code: 'questions-changed', detail: 'The questions have changed.' },
        });
      else await route.continue();
    });
    await page.getByRole('checkbox', { name: /^Not sure: Dizziness/ }).uncheck();
    await page.getByRole('checkbox', { name: /^Not sure: Dizziness/ }).check();
    await expect(page.getByText(/^The questions have changed since you began/)).toBeVisible();
    await expect(page.getByRole('checkbox', { name: /^Not sure: Dizziness/ })).toBeChecked();
    await isAccessible(page, 'questions that changed');
    await fits(page);
    watch.errors.splice(0, watch.errors.length, ...watch.errors.filter((e) => !e.includes('409')));
  });

  test('says whether anything has changed, and is asked again only next week', async ({ page }) => {
    await signIn(page, demo.client);
    // Asked in the week of a class; whether this is one, the server says.
    const asks = '**/api/clients/*/screening';
    await page.route(asks, async (route) => {
      const form = await (await route.fetch()).json();
      await route.fulfill({ json: { ...form, asksWhetherChanged: true } });
    });
    await page.reload();
    const ask = page.getByRole('region', { name: 'Has anything changed?' });
    await expect(ask).toBeVisible();
    await isAccessible(page, 'has anything changed');
    await fits(page);
    await page.unroute(asks);
    await ask.getByRole('button', { name: 'Nothing has changed' }).click();
    await expect(page.getByText('Thank you. We ask again next week.')).toBeVisible();
    await expect(ask).toHaveCount(0);
  });
});

test.describe('on a tablet of the desk', () => {
  test.use({ viewport: { width: 1024, height: 768 } });

  test('is handed over; nothing of it stays, not even going back', async ({ page }) => {
    await signIn(page, demo.desk);
    await page.keyboard.press('/');
    await page.keyboard.type('ingrid.solvangrey');
    await expect(page.getByRole('option', { name: /Ingrid/ })).toBeVisible();
    await page.keyboard.press('Enter');
    await page.getByRole('link', { name: 'Health questions' }).click();
    await expect(page.getByRole('heading', { level: 1, name: /^Hand the tablet to/ })).toBeVisible();
    await isAccessible(page, 'handing the tablet over');

    const sent: string[] = [];
    page.on('request', (request) => sent.push(`${request.method()} ${new URL(request.url()).pathname}`));
    await page.getByRole('button', { name: 'I have it: begin' }).click();
    await agree(page);
    await page.getByRole('checkbox', { name: /^Not sure: Dizziness/ }).check();
    await page.getByRole('button', { name: 'Stop and clear my answers' }).click();
    await expect(page.getByRole('heading', { level: 1, name: /^Hand the tablet to/ })).toBeVisible();

    await page.getByRole('button', { name: 'I have it: begin' }).click();
    await agree(page);
    await expect(page.getByRole('checkbox', { name: /^Not sure: Dizziness/ })).not.toBeChecked();
    await none(page);
    await goOn(page);
    await heading(page, 'Until now');
    await none(page);
    await goOn(page);
    await heading(page, 'Your health');
    await page.getByRole('checkbox', { name: /anaemia/ }).first().check();
    await none(page);
    await isAccessible(page, 'her questions on the tablet');
    await goOn(page);
    await none(page);
    await goOn(page);
    await page.getByRole('checkbox', { name: /^The person we call/ }).check();
    await page.getByRole('button', { name: 'Send my answers' }).click();
    await expect(page.getByRole('heading', { name: 'Thank you. Please hand the tablet back.' })).toBeVisible();
    await expect(page.locator('main')).toContainText('The questions are answered.');
    await expect(page.locator('body')).not.toContainText(/anaemia|iron/i);
    await isAccessible(page, 'handing the tablet back');
    expect(sent.filter((call) => call.startsWith('PUT'))).toEqual([]);
    expect(await page.evaluate(() => JSON.stringify([{ ...localStorage }, { ...sessionStorage }]))).not.toContain('anaemia');

    await page.goBack();
    await expect(page.locator('body')).not.toContainText(/anaemia|iron/i);
    await page.goForward();
    await expect(page.getByRole('heading', { level: 1, name: /^Hand the tablet to/ })).toBeVisible();
    await page.getByRole('link', { name: 'Back to the card' }).click();
    await expect(page.getByRole('heading', { name: 'What she may book' })).toBeVisible();
    await expect(page.locator('main')).not.toContainText(/anaemia/i);
  });

  test('loses no answer when the connection goes, and the desk sees none', async ({ page, context, watch }) => {
    await signIn(page, demo.desk);
    await page.keyboard.press('/');
    await page.keyboard.type('ingrid.solvangrey');
    await expect(page.getByRole('option', { name: /Ingrid/ })).toBeVisible();
    await page.keyboard.press('Enter');
    await page.getByRole('link', { name: 'Health questions' }).click();
    await page.getByRole('button', { name: 'I have it: begin' }).click();
    await agree(page);
    await none(page);
    await goOn(page);
    await heading(page, 'Until now');
    await none(page);
    await goOn(page);
    await heading(page, 'Your health');
    await page.getByRole('checkbox', { name: /anaemia/ }).first().check();
    await none(page);
    await goOn(page);
    await none(page);
    await goOn(page);
    await page.getByRole('checkbox', { name: /^The person we call/ }).check();
    await context.setOffline(true);
    await page.getByRole('button', { name: 'Send my answers' }).click();
    await expect(page.getByRole('alert').first()).toBeVisible();
    await isAccessible(page, 'answers that could not be sent');
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await expect(page.getByRole('checkbox', { name: /anaemia/ }).first()).toBeChecked();
    await goOn(page);
    await goOn(page);
    await context.setOffline(false);
    await page.getByRole('button', { name: 'Send my answers' }).click();
    await expect(page.getByRole('heading', { name: 'Thank you. Please hand the tablet back.' })).toBeVisible();
    await expect(page.locator('body')).not.toContainText(/anaemia|iron/i);
    watch.errors.splice(0, watch.errors.length, ...watch.errors.filter((e) => !/ERR_INTERNET_DISCONNECTED|ERR_NETWORK|Failed to fetch/.test(e)));
  });
});

/** A whole little picture: one white dot. */
function png(): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const head = Buffer.alloc(4);
    head.writeUInt32BE(data.length);
    const tail = Buffer.alloc(4);
    tail.writeUInt32BE(crc(body));
    return Buffer.concat([head, body, tail]);
  };
  const size = Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', size),
    chunk('IDAT', deflateSync(Buffer.from([0, 255]))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** ISO/IEC 15948, annex D. */
function crc(bytes: Buffer): number {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return (rest ^ 0xffffffff) >>> 0;
}
