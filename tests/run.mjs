// npm test: installs what the tests need, runs every check and every test, and prints the true totals.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildPages, checkMachine, installPackages, listen, root, run } from '../server/tools.mjs';

const results = [];
const began = Date.now();

checkMachine();
check('npm packages are installed', () => installPackages());
check('a browser is there', () => installBrowser());
check('C# tools are restored', () => run('dotnet', ['tool', 'restore', '--verbosity', 'quiet']));
check('C# is formatted', () => run('dotnet', ['csharpier', 'check', '.']));
const built = check('C# builds without a warning', () => run('dotnet', ['build', 'Studio.sln', '--nologo', '-v', 'q']));
check('the API document is the committed one', () => unchanged('server/Studio.Api/openapi.json'));
check('the client is written for this API', () => schemaIsCurrent());
check('TypeScript is linted and formatted', () => run('npm', ['run', 'lint', '--workspace', 'client', '--silent']));
const pages = check('the pages build', () => buildPages());
if (built) await dotnetTests();
await vitest();
if (built && pages) await playwright();

report();

function check(name, does) {
  console.log(`\n— ${name}`);
  const ok = Boolean(does());
  results.push({ name, passed: ok ? 1 : 0, failed: ok ? 0 : 1 });
  return ok;
}

function installBrowser() {
  if (existsSync('/usr/bin/chromium')) return true;
  if (spawnSync('which', ['apt-get']).status !== 0) {
    console.error('Chromium is needed at /usr/bin/chromium; install the package of your distribution.');
    return false;
  }
  const sudo = process.getuid?.() === 0 ? [] : ['sudo'];
  const apt = (...args) => {
    const [command, ...rest] = [...sudo, 'apt-get', ...args];
    return run(command, rest, { env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
  };
  return apt('update', '-qq') && apt('install', '-y', '-qq', '--no-install-recommends', 'chromium', 'fonts-noto-core');
}

function unchanged(path) {
  if (spawnSync('git', ['rev-parse', '--is-inside-work-tree'], { cwd: root }).status !== 0) return true;
  const same = spawnSync('git', ['diff', '--exit-code', '--stat', '--', path], { cwd: root, stdio: 'inherit' }).status === 0;
  if (!same) console.error(`The build changed ${path}: commit it, so that a review shows what changed in the API.`);
  return same;
}

function schemaIsCurrent() {
  const made = spawnSync('npx', ['openapi-typescript', join(root, 'server/Studio.Api/openapi.json'), '--properties-required-by-default'], {
    cwd: join(root, 'client'),
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  const kept = readFileSync(join(root, 'client/src/api/schema.d.ts'), 'utf8');
  const same = made.status === 0 && made.stdout.trim() === kept.trim();
  if (!same) console.error('client/src/api/schema.d.ts is not what the API document gives: npm run schema -w client');
  return same;
}

async function dotnetTests() {
  console.log('\n— C# tests');
  const { ok, output } = await listen('dotnet', ['test', '--solution', 'Studio.sln', '--no-build']);
  const count = (word) => Number(new RegExp(`^\\s*${word}: (\\d+)\\s*$`, 'm').exec(output.slice(output.lastIndexOf('Test run summary')))?.[1] ?? NaN);
  add('C# tests', count('succeeded'), count('failed'), ok);
}

async function vitest() {
  console.log('\n— client tests');
  const file = join(root, 'client', 'test-results', 'vitest.json');
  rmSync(file, { force: true });
  const { ok } = await listen('npx', ['vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile=${file}`], {
    cwd: join(root, 'client'),
  });
  const report = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {};
  add('client tests', report.numPassedTests, report.numFailedTests, ok);
}

async function playwright() {
  console.log('\n— stories in a browser');
  const file = join(root, 'tests', 'e2e', 'test-results', 'report.json');
  rmSync(file, { force: true });
  const { ok } = await listen('npx', ['playwright', 'test'], { cwd: join(root, 'tests', 'e2e') });
  const stats = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).stats : {};
  add('stories in a browser', stats.expected, (stats.unexpected ?? 0) + (stats.flaky ?? 0), ok);
}

// A run that ended badly without naming a failed test still failed.
function add(name, passed, failed, ok) {
  const known = Number.isFinite(passed) && Number.isFinite(failed);
  results.push({ name, passed: known ? passed : 0, failed: known ? failed + (ok || failed > 0 ? 0 : 1) : 1 });
}

function report() {
  console.log('\nWhat ran:');
  for (const { name, passed, failed } of results) console.log(`  ${name}: ${passed} passed, ${failed} failed`);
  const sum = (key) => results.reduce((total, r) => total + r[key], 0);
  console.log(`  in ${((Date.now() - began) / 1000).toFixed(0)} s\n`);
  console.log(`${sum('passed')} passed, ${sum('failed')} failed`);
  const missing = !built || !pages;
  process.exitCode = sum('failed') > 0 || missing ? 1 : 0;
}
