import { defineConfig } from '@playwright/test';

// Debian's chromium; as root it runs only without its sandbox, and on a closed network only without its background calls.
export default defineConfig({
  testDir: '.',
  testMatch: '*.story.ts',
  outputDir: 'test-results/output',
  fullyParallel: false,
  workers: 2,
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [['list'], ['json', { outputFile: 'test-results/report.json' }]],
  use: {
    locale: 'en-GB',
    timezoneId: 'Europe/Lisbon',
    contextOptions: { reducedMotion: 'reduce' },
    actionTimeout: 8_000,
    // A film of every story costs half as much again as the story; STUDIO_TRACE=1 keeps those of what failed.
    trace: process.env.STUDIO_TRACE === '1' ? 'retain-on-failure' : 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env.STUDIO_CHROMIUM ?? '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
