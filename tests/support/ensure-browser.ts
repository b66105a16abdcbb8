import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** The browser that the tests drive; `CHROMIUM` names another one. */
export const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** Switches for a browser without a screen, a network of its own, or anything to remember. */
export const CHROMIUM_SWITCHES = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * Sees that there is a browser. As root on Debian or Ubuntu, such as in a container, its package is installed;
 * elsewhere nothing is installed unasked, and the message says what to do.
 */
export function ensureBrowser(): void {
  if (existsSync(CHROMIUM)) return;
  const advice = `No browser at ${CHROMIUM}. Install your system's Chromium, or name one: CHROMIUM=/path/to/chromium npm test`;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/usr/bin/apt-get')) throw new Error(advice);
  console.log(`No browser at ${CHROMIUM}: installing the package "chromium".`);
  const apt = (...line: string[]) =>
    spawnSync('apt-get', line, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  apt('update');
  apt('install', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core');
  if (!existsSync(CHROMIUM)) throw new Error(advice);
}
