#!/usr/bin/env node
/**
 * `panel-ledger` as a package's command. It starts the commands on the Node that comes with the packages, whatever the
 * machine has; with what makes Node read TypeScript among packages, where it refuses to by itself; and for a build with
 * what makes V8 keep less memory.
 */
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { constants } from 'node:os';
import { dirname, join } from 'node:path';

const require = createRequire(import.meta.url);

function packagedNode() {
  try {
    const folder = dirname(require.resolve('node/package.json'));
    const { bin } = require('node/package.json');
    return join(folder, typeof bin === 'string' ? bin : bin.node);
  } catch {
    return process.execPath;
  }
}

const args = process.argv.slice(2);
const child = spawn(
  packagedNode(),
  [
    ...(args[0] === 'build' ? ['--max-semi-space-size=16', '--heap-growing-percent=30'] : []),
    ...['--import', new URL('strip-types.mjs', import.meta.url).href],
    join(import.meta.dirname ?? dirname(new URL(import.meta.url).pathname), '..', 'main.ts'),
    ...args,
  ],
  { stdio: 'inherit' },
);
// A terminal's interrupt reaches both; whoever stops this process alone means the command.
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
  process.on(signal, () => signal !== 'SIGINT' && child.kill(signal));
child.on('error', (error) => {
  console.error(`Node can’t be started: ${error.message}`);
  process.exitCode = 1;
});
child.on('close', (code, signal) => {
  process.exitCode = code ?? 128 + (signal ? constants.signals[signal] : 0);
});
