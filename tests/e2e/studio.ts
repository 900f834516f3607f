// A story's studio: a real server of its own on a fresh data folder, its clock set to a Wednesday morning and running.
import { test as base, expect, type Page } from '@playwright/test';
import axe, { type RunOnly } from 'axe-core';
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const api = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'server', 'Studio.Api');

/** Wednesday 3 March 2027, 07:30 in Lisbon. */
export const opensAt = '2027-03-03T07:30:00Z';

export const demo = {
  owner: 'owner@demo.example',
  desk: 'desk@demo.example',
  instructor: 'instructor@demo.example',
  client: 'client@demo.example',
  password: 'demo-studio',
} as const;

export type Studio = { url: string };

/** The studio of the file whose stories run in this worker. */
class Studios {
  #open: { file: string; studio: Studio; close: () => Promise<void> } | undefined;

  async of(file: string): Promise<Studio> {
    if (this.#open?.file !== file) {
      await this.close();
      this.#open = { file, ...(await start()) };
    }
    return this.#open.studio;
  }

  async close(): Promise<void> {
    await this.#open?.close();
    this.#open = undefined;
  }
}

async function start(): Promise<{ studio: Studio; close: () => Promise<void> }> {
  const data = await mkdtemp(join(tmpdir(), 'studio-'));
  const url = `http://127.0.0.1:${await freePort()}`;
  const program = join(api, 'bin', 'Debug', 'net10.0', 'Studio.Api.dll');
  const server = spawn('dotnet', [program, '--contentRoot', api, '--urls', url], {
    // Profiling the code for later costs more than a story's server lives to earn back.
    env: { ...process.env, Studio__Data: data, Studio__Clock: `+${opensAt}`, DOTNET_TieredPGO: '0' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  server.stdout.on('data', (chunk) => (said += chunk));
  server.stderr.on('data', (chunk) => (said += chunk));
  const gone = new Promise<void>((resolve) => server.on('exit', () => resolve()));
  await untilOpen(url, () => said, server);
  return {
    studio: { url },
    close: async () => {
      server.kill('SIGTERM');
      await gone;
      await rm(data, { recursive: true, force: true });
    },
  };
}

declare global {
  interface Window {
    axe: typeof axe;
  }
}

type Watch = { errors: string[] };

export const test = base.extend<{ studio: Studio; watch: Watch; tidy: void }, { studios: Studios }>({
  studios: [
    async ({}, use) => {
      const studios = new Studios();
      await use(studios);
      await studios.close();
    },
    { scope: 'worker', timeout: 60_000 },
  ],
  // A studio for each file: what another file's stories did to theirs is no matter of chance here.
  studio: [async ({ studios }, use, { file }) => use(await studios.of(file)), { timeout: 60_000 }],
  baseURL: async ({ studio }, use) => use(studio.url),
  // Pages of other people that a story opened would go on listening, and cost every story after it.
  tidy: [
    async ({ browser }, use) => {
      await use();
      for (const context of browser.contexts()) await context.close();
    },
    { auto: true },
  ],
  // No story passes while the page complains.
  watch: [
    async ({ page }, use) => {
      const errors: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error') errors.push(message.text());
      });
      page.on('pageerror', (error) => errors.push(String(error)));
      await use({ errors });
      expect(errors, 'errors on the console').toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };

/** Signed in as the page would be; that the form does it too is told once, in the client's story. */
export async function signIn(page: Page, email: string): Promise<void> {
  const answer = await page.request.post('/api/session', { data: { email, password: demo.password } });
  expect(answer.status(), `signing in as ${email}`).toBe(200);
  // What the form leaves in the browser besides the cookie.
  await page.addInitScript((once) => {
    // A document in a sandbox has no storage.
    if (window.origin === 'null' || sessionStorage.getItem(once) !== null) return;
    sessionStorage.setItem(once, 'told');
    localStorage.setItem('studio.has-signed-in', 'yes');
  }, `story.${crypto.randomUUID()}`);
  await page.goto('/');
  await isIn(page);
}

/** Signs in with the form. */
export async function signInByHand(page: Page, email: string): Promise<void> {
  await page.goto('/');
  await page.getByLabel('E-mail').fill(email);
  await page.locator('input[type=password]').fill(demo.password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await isIn(page);
}

// The address changes before the page does.
async function isIn(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1, name: 'Sign in' })).toHaveCount(0);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

// What a colour scheme can break is looked at twice; everything else is the same page in another dress.
const rules = {
  light: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
  dark: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] },
} satisfies Record<string, RunOnly>;

/** WCAG 2.2 A and AA in light, and in dark all that depends on colours. */
export async function isAccessible(page: Page, where: string): Promise<void> {
  await page.evaluate(axe.source);
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    // The page hears of the change a moment later; its colours are judged once it has.
    await expect(page.locator('html')).toHaveAttribute('data-mantine-color-scheme', scheme);
    const told = await page.evaluate(async (only) => {
      // A colour on its way to another is neither.
      await Promise.allSettled(document.getAnimations().map((going) => going.finished));
      const { violations } = await window.axe.run(document, { resultTypes: ['violations'], runOnly: only });
      return violations.map((v) => `${v.id}: ${v.help} (${v.nodes.map((n) => n.target.join(' ')).join('; ')})`);
    }, rules[scheme]);
    expect(told, `${where}, ${scheme}`).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: 'light' });
}

/** Keeps a picture for the README, when asked for with STUDIO_PICTURES=1. */
export async function picture(page: Page, name: string): Promise<void> {
  if (process.env.STUDIO_PICTURES !== '1') return;
  const folder = join(api, '..', '..', 'client', 'pictures');
  await page.screenshot({ path: join(folder, `${name}.png`) });
}

/** The page does not scroll sideways. */
export async function fits(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(over, 'pixels the page is wider than its window').toBeLessThanOrEqual(0);
}

async function untilOpen(url: string, said: () => string, server: { exitCode: number | null }): Promise<void> {
  for (let tries = 0; tries < 300; tries++) {
    if (server.exitCode !== null) throw new Error(`The server ended: ${said()}`);
    try {
      if ((await fetch(`${url}/healthz`)).ok) return;
    } catch {
      // Not listening yet.
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`The server did not open: ${said()}`);
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => (address && typeof address === 'object' ? resolve(address.port) : reject(new Error('no port'))));
    });
  });
}
