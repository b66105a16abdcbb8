import { join } from 'node:path';
import { differences, fingerprints } from '../built/build.ts';
import { buildOnce } from './build-once.ts';
import { contentOf } from './content.ts';
import type { Section } from './report.ts';
import { discard } from './scratch.ts';
import { ourSite, PAGES } from './sites.ts';

/** Builds the same content twice, in folders of different names, and compares every byte. */
export async function repeatability(panels: number): Promise<Section> {
  const prints: Array<Record<string, string>> = [];
  for (let run = 0; run < 2; run++) {
    const site = ourSite();
    await buildOnce(site, contentOf(panels));
    prints.push(fingerprints(join(site.folder, PAGES)));
    discard(site.folder);
  }
  const [first = {}, second = {}] = prints;
  const files = Object.keys(first).length;
  if (files === 0) throw new Error('a build wrote no file');
  const unlike = differences(first, second);
  return {
    title: `Repeatability, ${panels} panels`,
    lines: [
      {
        what: 'two builds, the same bytes',
        measured: unlike.length === 0 ? 'yes' : 'no',
        against: `${files} files`,
        budget: 'yes',
        isWithin: unlike.length === 0,
      },
    ],
    remarks: unlike.slice(0, 10).map((it) => `differs: ${it}`),
  };
}
