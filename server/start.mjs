// npm start: installs, builds, runs the studio, and says where it is.
import { spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { buildPages, checkMachine, installPackages, root, run, stop } from './tools.mjs';

const began = Date.now();
const extra = process.argv.slice(2);
const address = addressFrom(extra) ?? process.env.ASPNETCORE_URLS?.split(';')[0] ?? 'http://127.0.0.1:5080';

checkMachine();
await checkPort(address);
if (!installPackages()) stop('The packages could not be installed; see above.');
if (!buildPages()) stop('The pages could not be built; see above.');
console.log('Building the server …');
const project = join('server', 'Studio.Api');
if (!run('dotnet', ['build', project, '-c', 'Release', '--nologo', '-v', 'q', '-p:OpenApiGenerateDocuments=false'])) {
  stop('The server could not be built; see above.');
}

const program = join(root, project, 'bin', 'Release', 'net10.0', 'Studio.Api.dll');
const args = [program, '--contentRoot', join(root, project), ...extra];
if (!addressFrom(extra)) args.push('--urls', address);
const server = spawn('dotnet', args, { cwd: root, stdio: 'inherit' });
let over = false;
server.on('exit', (code) => {
  over = true;
  process.exitCode = code ?? 1;
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));

await untilOpen();
if (!over) await welcome();

function addressFrom(words) {
  const at = words.findIndex((w) => w === '--urls' || w.startsWith('--urls='));
  if (at < 0) return undefined;
  return (words[at].includes('=') ? words[at].split('=')[1] : words[at + 1])?.split(';')[0];
}

function checkPort(url) {
  const { hostname, port, protocol } = new URL(url.replace(/\/\/[*+]/, '//0.0.0.0'));
  const number = Number(port || (protocol === 'https:' ? 443 : 80));
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error) =>
      stop(
        error.code === 'EADDRINUSE'
          ? `Port ${number} is taken: another program, or another studio, listens there. Stop it, or choose another address: npm start -- --urls http://127.0.0.1:5081`
          : `The studio cannot listen on ${url}: ${error.message}`,
      ),
    );
    probe.listen(number, hostname === 'localhost' ? '127.0.0.1' : hostname, () => probe.close(resolve));
  });
}

async function untilOpen() {
  while (!over) {
    try {
      if ((await fetch(new URL('/healthz', address))).ok) return;
    } catch {
      // Not listening yet.
    }
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

async function welcome() {
  const demo = await (await fetch(new URL('/api/demo', address))).json();
  console.log(`\nThe studio is open: ${address}  (after ${((Date.now() - began) / 1000).toFixed(1)} s; Ctrl+C closes it)`);
  if (demo.loaded) {
    console.log(`\nThis is an invented demo studio. Sign in with the password ${demo.accounts[0]?.password} as`);
    for (const { email, does } of demo.accounts) console.log(`  ${email.padEnd(26)} ${does}`);
  }
}
