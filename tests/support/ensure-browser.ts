import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/**
 * The browser that most tests drive; `CHROMIUM` names another one. The same engine without windows takes two thirds of the
 * processor time, and is taken where it is installed.
 */
export const CHROMIUM =
  process.env.CHROMIUM ??
  ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'].find((it) => existsSync(it)) ??
  '/usr/bin/chromium';

/** The other browser, in which readers' journeys are walked as well; `FIREFOX` names another one. */
export const FIREFOX = process.env.FIREFOX ?? '/usr/bin/firefox-esr';

/** The server that the recipe for one is tried with; `NGINX` names another one. */
export const NGINX = process.env.NGINX ?? '/usr/sbin/nginx';

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
  // Without a screen letters are as wide as their outlines, as on readers' screens; else they are fitted to pixels.
  '--font-render-hinting=none',
];

const PROGRAMS = [
  { file: CHROMIUM, name: 'Chromium', variable: 'CHROMIUM', packages: ['chromium', 'fonts-dejavu-core'] },
  { file: FIREFOX, name: 'Firefox', variable: 'FIREFOX', packages: ['firefox-esr'] },
  { file: NGINX, name: 'nginx', variable: 'NGINX', packages: ['nginx'] },
];

/**
 * Sees that both browsers are there, and the server. As root on Debian, such as in a container, their packages are
 * installed; elsewhere nothing is installed unasked, and the message says what to do.
 */
export function ensureBrowsers(): void {
  const missing = PROGRAMS.filter((it) => !existsSync(it.file));
  if (missing.length === 0) return;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/usr/bin/apt-get')) throw new Error(missing.map(advice).join('\n'));
  const packages = missing.flatMap((it) => it.packages);
  console.log(`Installing the packages of programs that are missing: ${packages.join(', ')}.`);
  const apt = (...line: string[]) =>
    spawnSync('apt-get', line, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  apt('update');
  apt('install', '-y', '--no-install-recommends', ...packages);
  const still = missing.filter((it) => !existsSync(it.file));
  if (still.length > 0) throw new Error(still.map(advice).join('\n'));
}

function advice({ file, name, variable }: (typeof PROGRAMS)[number]): string {
  return `There is no ${file}. Install your system's ${name}, or name one: ${variable}=/path/to/it npm test`;
}
