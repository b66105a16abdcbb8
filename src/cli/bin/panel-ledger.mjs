#!/usr/bin/env node
/**
 * `panel-ledger` as a package's command. It starts the commands on the Node that comes with the packages, whatever the
 * machine has; with what makes Node read TypeScript among packages, where it refuses to by itself; and with what makes V8
 * keep less memory, as in the scripts of package.json.
 */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { constants } from 'node:os';
import { dirname, join } from 'node:path';

const require = createRequire(import.meta.url);

function packagedNode() {
  try {
    const folder = dirname(require.resolve('node/package.json'));
    const { bin } = require('node/package.json');
    const file = join(folder, typeof bin === 'string' ? bin : bin.node);
    return existsSync(file) ? file : process.execPath;
  } catch {
    return process.execPath;
  }
}

const node = packagedNode();
// What strips types came with 22.15.
if (node === process.execPath && Number(process.versions.node.split('.')[0]) < 22) {
  console.error('The Node that comes with the packages is not there: run `npm rebuild node`, or use Node 24.');
  process.exit(1);
}
/** A log of a hundred megabytes leaves so much behind while it is read that V8 would set a hundred more aside for that. */
const COMMAND_FLAGS = ['--max-semi-space-size=4'];
const FLAGS = new Map([
  ['build', ['--max-semi-space-size=16', '--heap-growing-percent=60']],
  ['dev', []],
  ['preview', []],
]);
const args = process.argv.slice(2);
const child = spawn(
  node,
  [
    ...(FLAGS.get(args[0]) ?? COMMAND_FLAGS),
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
