/**
 * `npm run bench`: whether the guide keeps its budgets on this machine. Exit 1 only where something could not be
 * measured: how fast a machine is, is no fault of the code.
 *
 *     npm run bench -- [--quick] [--runs N] [--panels N]
 */
import { availableParallelism, loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { type Built, buildTime } from './build-time.ts';
import { demoPages } from './demo-pages.ts';
import { devTime } from './dev-time.ts';
import { firstPaint } from './first-paint.ts';
import { logMemory } from './log-memory.ts';
import { opticsTime } from './optics-time.ts';
import { outputWeight } from './output-weight.ts';
import { pageWeight } from './page-weight.ts';
import { rebuildTime } from './rebuild-time.ts';
import { repeatability } from './repeatability.ts';
import { printed, type Section } from './report.ts';
import { sortTime } from './sort-time.ts';
import { tableTime } from './table-time.ts';

/** The guide that the weight of a page is measured on, and builds are repeated with. */
const SMALL = 100;
const ROWS = 5000;
/** Guides that are written in while the development server runs. */
const WRITTEN = [14, 200];

const { values } = parseArgs({
  options: {
    quick: { type: 'boolean', default: false },
    runs: { type: 'string', default: '3' },
    panels: { type: 'string', default: '1000' },
  },
});
const runs = values.quick ? 1 : positive('runs', values.runs);
const clicks = values.quick ? 5 : 15;
const large = positive('panels', values.panels);

function positive(name: string, text: string): number {
  if (!/^[1-9]\d*$/.test(text)) {
    console.error(`--${name} is "${text}"; wanted a whole number from 1`);
    process.exit(2);
  }
  return Number(text);
}

/** What could not be measured is said and counted; the rest goes on. */
async function section(make: () => Section | Promise<Section>): Promise<void> {
  try {
    console.log(`${printed(await make())}\n`);
  } catch (error) {
    console.log(`NOT MEASURED: ${error instanceof Error ? error.message : error}\n`);
    process.exitCode = 1;
  }
}

console.log(
  `Node ${process.version}, ${availableParallelism()} processors, load ${(loadavg()[0] ?? 0).toFixed(1)}. Read ratios, not seconds.\n`,
);
let built: Built | undefined;
await section(async () => {
  built = await buildTime(SMALL, runs);
  return built.section;
});
const site = () => {
  if (!built) throw new Error('there is no built guide to measure on');
  return built.pages;
};
await section(() => outputWeight(site(), SMALL));
await section(() => rebuildTime(SMALL, runs));
await section(() => pageWeight(site(), SMALL));
await section(() => firstPaint(site(), `${SMALL} panels`, runs));
// The demonstration has the kinds of pages that a guide has only when it asks for them.
await section(async () => firstPaint(await demoPages(), 'the demonstration', runs));
await section(() => sortTime(site(), ROWS, clicks));
await section(() => tableTime(site(), ROWS, clicks));
await section(() => opticsTime(runs));
if (!values.quick) await section(() => logMemory());
await section(() => repeatability(SMALL));
for (const panels of WRITTEN) await section(() => devTime(panels, values.quick ? 2 : 5));
if (!values.quick) {
  built = undefined;
  await section(async () => {
    built = await buildTime(large, runs);
    return built.section;
  });
  await section(() => outputWeight(site(), large));
  await section(() => rebuildTime(large, runs));
}
