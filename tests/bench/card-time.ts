/**
 * What cards cost a build, by processor time: without any, with all of them made anew, and with all of them kept;
 * and all three against a bare build of as many pages as panels have.
 * `npx node tests/bench/card-time.ts [PANELS]`.
 */
import { appendFileSync, cpSync, globSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { buildOnce } from './build-once.ts';
import { contentOf } from './content.ts';
import { discard, PROJECT, scratchFolder } from './scratch.ts';
import { bareSite, ourSite, PAGES, pageCount } from './sites.ts';

/**
 * What cards that are kept, and all of them made for the first time, may add to a build that has none, by processor
 * time, %. Our own choice. To make one takes about 4 ms; to keep it, a link to its file.
 */
const MOST = { kept: 15, made: 75 } as const;

const panels = Number(process.argv[2] ?? 100);
const site = ourSite();
const bare = bareSite(2);
const plain = contentOf(panels);
const withCards = scratchFolder('with-cards');
cpSync(plain, withCards, { recursive: true });
const guide = join(withCards, 'guide.yaml');
if (/^cards:/m.test(readFileSync(guide, 'utf8'))) throw new Error('the generated guide asks for cards already');
appendFileSync(guide, 'cards:\n  preview: true\n  show: true\n  badges: true\n');

// What is worked out of readings is kept from here on, for all three alike.
await buildOnce(site, plain);
const without = await buildOnce(site, plain);
discard(join(PROJECT, 'node_modules/.cache/panel-ledger/cards'));
const cold = await buildOnce(site, withCards);
const kept = await buildOnce(site, withCards);
await buildOnce(bare, contentOf(1));
const yardstick = await buildOnce(bare, plain);

const folder = join(site.folder, PAGES, 'cards');
const files = globSync('**/*.*', { cwd: folder });
const bytes = files.reduce((sum, it) => sum + statSync(join(folder, it)).size, 0);
const times = (it: typeof cold) => `${(it.seconds / yardstick.seconds).toFixed(2)} × bare by the clock`;
const part = (it: typeof cold) => Math.round(100 * (it.processor / without.processor - 1));
console.log(`${panels} panels: ${files.length} files under /cards/, ${(bytes / 1e6).toFixed(0)} MB
without cards ${without.processor.toFixed(1)} s of processor time, ${times(without)}, ${without.memory.toFixed(0)} MiB
all made      ${cold.processor.toFixed(1)} s, ${part(cold)} % more (budget ${MOST.made} %), ${times(cold)}, ${cold.memory.toFixed(0)} MiB
all kept      ${kept.processor.toFixed(1)} s, ${part(kept)} % more (budget ${MOST.kept} %), ${times(kept)}, ${kept.memory.toFixed(0)} MiB
bare          ${yardstick.processor.toFixed(1)} s, ${pageCount(bare)} pages`);
process.exitCode = part(kept) > MOST.kept || part(cold) > MOST.made ? 1 : 0;
