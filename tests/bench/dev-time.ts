import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, existsSync, globSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { CHROMIUM, CHROMIUM_SWITCHES } from '../support/ensure-browser.ts';
import { contentOf, today } from './content.ts';
import { LONGEST } from './open-page.ts';
import { median, type Section, spread } from './report.ts';
import { discard, scratchFolder } from './scratch.ts';
import { ourSite } from './sites.ts';

/** From saving a file to the open page that shows it, s: a small guide, and a large one. */
const MOST_SECONDS = { small: 1, large: 1.5 };
const LARGE_FROM = 100;

/** How soon a saved file is on the screen while the development server runs. */
export async function devTime(panels: number, times: number): Promise<Section> {
  if (!existsSync(CHROMIUM)) throw new Error(`no browser at ${CHROMIUM}; name one: CHROMIUM=/path/to/chromium`);
  const site = ourSite();
  const content = scratchFolder('written');
  cpSync(contentOf(panels), content, { recursive: true });
  const server = await serve(site.folder, content);
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_SWITCHES, timeout: LONGEST });
  try {
    const page = await browser.newPage();
    page.setDefaultTimeout(LONGEST);
    const [file = ''] = globSync('panels/*/index.md', { cwd: content }).toSorted();
    const address = `${server.origin}/panels/${file.split(/[\\/]/)[1]}/`;
    await page.goto(address, { waitUntil: 'load' });
    const save = async (edit: (text: string) => string, wanted: string): Promise<number> => {
      const text = readFileSync(join(content, file), 'utf8');
      const started = performance.now();
      writeFileSync(join(content, file), edit(text));
      await page.getByText(wanted).first().waitFor();
      return (performance.now() - started) / 1000;
    };
    const verdict = (i: number) => save((it) => it.replace(/^verdict: .*$/m, `verdict: Saved ${i}.`), `Saved ${i}.`);
    const note = (i: number) => save((it) => `${it}\nNoted ${i}.\n`, `Noted ${i}.`);
    // The first save finds modules that were never loaded.
    await verdict(-1);
    await note(-1);
    const [verdicts, notes]: [number[], number[]] = [[], []];
    for (let i = 0; i < times; i++) {
      verdicts.push(await verdict(i));
      notes.push(await note(i));
    }
    const budget = MOST_SECONDS[panels < LARGE_FROM ? 'small' : 'large'];
    const line = (what: string, values: readonly number[]) => ({
      what,
      measured: spread(values, 's', 2),
      ratio: median(values) / budget,
      budget: `${budget} s`,
      isWithin: median(values) <= budget,
    });
    return {
      title: `From saving a file to the open page, ${panels} panels (Chromium ${browser.version()})`,
      lines: [line('a verdict', verdicts), line('the notes', notes)],
    };
  } finally {
    await browser.close();
    server.stop();
    for (const folder of [site.folder, content]) discard(folder);
  }
}

interface Served {
  origin: string;
  stop(): void;
}

/** The development server, on any free port. */
async function serve(folder: string, content: string): Promise<Served> {
  const env = {
    ...process.env,
    ASTRO_TELEMETRY_DISABLED: '1',
    LEDGER_CONTENT: content,
    LEDGER_TODAY: today,
    NO_COLOR: '1',
  };
  const child = spawn(process.execPath, ['src/cli/main.ts', 'dev'], { cwd: folder, env });
  process.prependOnceListener('exit', () => child.kill('SIGKILL'));
  return { origin: await originOf(child), stop: () => child.kill('SIGKILL') };
}

function originOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const onText = (text: string) => {
      said += text;
      const [origin] = /http:\/\/localhost:\d+/.exec(said) ?? [];
      if (origin) resolve(origin);
    };
    child.stdout?.setEncoding('utf8').on('data', onText);
    child.stderr?.setEncoding('utf8').on('data', onText);
    child.once('error', reject).once('close', (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
  });
}
