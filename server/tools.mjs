// What both commands need: finding the root, running a program, installing packages, building the pages.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
export const pages = join(root, 'server', 'Studio.Api', 'wwwroot');
const windows = process.platform === 'win32';

/** Runs a program to its end, its output shown; true when it went well. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: windows, ...options });
  return done.status === 0;
}

/** Runs a program to its end; its output is shown as it comes and given back. */
export function listen(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, shell: windows, stdio: ['ignore', 'pipe', 'pipe'], ...options });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (chunk) => {
        output += chunk;
        process.stdout.write(chunk);
      });
    }
    child.on('error', (error) => resolve({ ok: false, output: String(error) }));
    child.on('close', (code) => resolve({ ok: code === 0, output }));
  });
}

/** Stops with a message when something the two commands cannot install is missing. */
export function checkMachine() {
  if (Number(process.versions.node.split('.')[0]) < 20) {
    stop(`Node 20 or later is needed; this is ${process.version}.`);
  }
  const sdk = spawnSync('dotnet', ['--version'], { cwd: root, encoding: 'utf8', shell: windows });
  if (sdk.status !== 0) {
    stop('The .NET 10 SDK is needed: "dotnet --version" does not answer here with a version that global.json accepts.');
  }
}

/** Says why and ends. */
export function stop(message) {
  console.error(message);
  process.exit(1);
}

/** Installs the npm packages of the lock file when they are not there or another lock file put them there. */
export function installPackages() {
  const installed = join(root, 'node_modules', '.package-lock.json');
  const locked = join(root, 'package-lock.json');
  if (existsSync(installed) && statSync(installed).mtimeMs >= statSync(locked).mtimeMs) return true;
  console.log('Installing the packages of the pages …');
  return run('npm', ['ci', '--no-audit', '--no-fund']);
}

/** Builds the pages when they are older than what they are made of. */
export function buildPages() {
  const built = join(pages, 'index.html');
  const newest = Math.max(
    newestUnder(join(root, 'client', 'src')),
    ...['index.html', 'package.json', 'vite.config.ts'].map((f) => statSync(join(root, 'client', f)).mtimeMs),
  );
  if (existsSync(built) && statSync(built).mtimeMs >= newest) return true;
  console.log('Building the pages …');
  return run('npm', ['run', 'build', '--workspace', 'client', '--silent']);
}

function newestUnder(folder) {
  let newest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    newest = Math.max(newest, entry.isDirectory() ? newestUnder(path) : statSync(path).mtimeMs);
  }
  return newest;
}
