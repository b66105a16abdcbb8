import { cpSync, globSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { differences, fingerprints } from '../built/build.ts';
import { type Build, buildOnce } from './build-once.ts';
import { contentOf } from './content.ts';
import { median, type Section, spread } from './report.ts';
import { discard, scratchFolder } from './scratch.ts';
import { ourSite, PAGES } from './sites.ts';

/** Of a build that keeps nothing. */
const MOST_SHARE = 1 / 3;

/** How long the guide takes to build again after one price has changed, and whether all of it is as it should be. */
export async function rebuildTime(panels: number, runs: number): Promise<Section> {
  const site = ourSite();
  const content = scratchFolder('changing');
  cpSync(contentOf(panels), content, { recursive: true });
  const pages = () => fingerprints(join(site.folder, PAGES));
  const [cold, again]: [Build[], Build[]] = [[], []];
  for (let run = 0; run < runs; run++) {
    cold.push(await buildOnce(site, content));
    changePrice(content);
    again.push(await buildOnce(site, content, { isAfterAnother: true }));
  }
  const rebuilt = pages();
  await buildOnce(site, content);
  const different = differences(rebuilt, pages());
  if (different.length > 0) throw new Error(`a build again gives other bytes: ${different.slice(0, 5).join(', ')}`);
  for (const folder of [site.folder, content]) discard(folder);
  const line = (what: 'seconds' | 'processor', name: string) => {
    const [own, other] = [again.map((it) => it[what]), cold.map((it) => it[what])];
    return {
      what: name,
      measured: spread(own, 's', 2),
      against: `${spread(other, 's', 2)} with nothing kept`,
      ratio: median(own) / median(other),
    };
  };
  const judged = line('seconds', 'whole build');
  return {
    title: `Build again after one price, ${panels} panels, ${runs === 1 ? 'one run' : `median of ${runs} runs`}`,
    lines: [
      { ...judged, budget: `${MOST_SHARE.toFixed(2)} times`, isWithin: judged.ratio <= MOST_SHARE },
      line('processor', '  processor time'),
    ],
    remarks: [`All ${Object.keys(rebuilt).length} files are, byte for byte, those of a build that keeps nothing.`],
  };
}

/** Another price for one panel, a tenth higher. */
function changePrice(content: string): void {
  for (const path of globSync('panels/*/index.md', { cwd: content }).toSorted()) {
    const file = join(content, path);
    const before = readFileSync(file, 'utf8');
    const after = before.replace(/^( *paid: )(\d+)/m, (_, key, price) => `${key}${Math.round(Number(price) * 1.1)}`);
    if (after === before) continue;
    writeFileSync(file, after);
    return;
  }
  throw new Error('no panel has a price that could change');
}
