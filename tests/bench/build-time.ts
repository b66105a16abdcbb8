import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Build, buildOnce } from './build-once.ts';
import { contentOf } from './content.ts';
import { type Line, median, type Section, spread } from './report.ts';
import { discard } from './scratch.ts';
import { bareSite, ourSite, PAGES, pageCount, type Site } from './sites.ts';
import type { Stages } from './stages.ts';

/** A small guide and a large one, over bare builds of as many pages. */
const MOST_TIMES_BARE = { small: 2, large: 2.5 };
const LARGE_FROM = 1000;
/** Of the build, %. */
const MOST_SHARE = 10;
/** MiB. */
const MOST_MEMORY = 800;
/** ms. */
const LONGEST_STAGES = 5 * 60 * 1000;

/** What a measurement of builds leaves behind for the others. */
export interface Built {
  section: Section;
  /** The folder with the pages of a built guide. */
  pages: string;
}

interface Timed {
  site: Site;
  builds: Build[];
}

/**
 * Whole builds of so many panels against bare ones, in turn, so that a busy machine hits all alike. Each site
 * is built once before, as no tester's build is the first one after the installation: Astro's bundler makes ours its
 * program then. What that takes is a line of its own.
 */
export async function buildTime(panels: number, runs: number): Promise<Built> {
  const content = contentOf(panels);
  const [ours, two, one]: [Timed, Timed, Timed] = [
    { site: ourSite(), builds: [] },
    { site: bareSite(2), builds: [] },
    { site: bareSite(1), builds: [] },
  ];
  for (const { site } of [two, one]) await buildOnce(site, contentOf(1));
  // Ours with all its panels: fits of beams are kept from build to build, and what they take is a line of its own.
  await buildOnce(ours.site, content);
  const pages = join(ours.site.folder, PAGES);
  const anew = await buildOnce({ ...ours.site, command: [...ours.site.command, '--fresh'] }, content);
  const stages: Stages[] = [];
  const afresh: Stages[] = [];
  for (let run = 0; run < runs; run++) {
    for (const { site, builds } of [ours, two, one]) builds.push(await buildOnce(site, content));
    stages.push(stagesOnce(content, pages));
    afresh.push(stagesOnce(content, pages, 'afresh'));
  }
  const [ourCount, twoCount, oneCount] = [pageCount(ours.site), pageCount(two.site), pageCount(one.site)];
  if (twoCount !== 2 * panels || oneCount !== panels || ourCount <= twoCount) {
    throw new Error(`${ourCount}, ${twoCount} and ${oneCount} pages were built of ${panels} panels`);
  }
  for (const { site } of [two, one]) discard(site.folder);
  return {
    pages,
    section: {
      title: `Build, ${panels} panels, ${runs === 1 ? 'one run' : `median of ${runs} runs in turn`}`,
      lines: [
        ...timeLines(ours.builds, two.builds, one.builds, MOST_TIMES_BARE[panels < LARGE_FROM ? 'small' : 'large']),
        {
          what: '  with the program bundled anew (--fresh)',
          measured: `${anew.seconds.toFixed(2)} s, ${anew.memory.toFixed(0)} MiB`,
          against: `${anew.processor.toFixed(2)} s of processor time`,
        },
        ...shareLines(ours.builds, stages, afresh),
        memoryLine(ours.builds, two.builds),
      ],
      remarks: [`Ours wrote ${ourCount} pages, ${ourCount - twoCount} of them for methods and the like.`],
    },
  };
}

function timeLines(ours: readonly Build[], two: readonly Build[], one: readonly Build[], most: number): Line[] {
  const line = (what: 'seconds' | 'processor', name: string, bare: readonly Build[], described: string): Line => {
    const [own, other] = [ours.map((it) => it[what]), bare.map((it) => it[what])];
    return {
      what: name,
      measured: spread(own, 's', 2),
      against: `${spread(other, 's', 2)} bare, ${described}`,
      ratio: median(own) / median(other),
    };
  };
  const judged = line('seconds', 'whole build', two, 'two pages a file too');
  return [
    { ...judged, budget: `${most} times`, isWithin: (judged.ratio ?? Infinity) <= most },
    line('processor', '  processor time', two, 'two pages a file too'),
    line('seconds', '  against fewer pages', one, 'one page a file'),
  ];
}

/** The stages were timed in processes of their own; what is left of the whole build is Astro's and the pages'. */
function shareLines(ours: readonly Build[], stages: readonly Stages[], afresh: readonly Stages[]): Line[] {
  const whole = median(ours.map((it) => it.seconds));
  const times = (stage: keyof Stages) => stages.map((it) => it[stage]);
  const line = (what: string, values: readonly number[]): Line => ({
    what: `  ${what}`,
    measured: spread(values, 's', 2),
    against: `${((100 * median(values)) / whole).toFixed(1)} % of the build`,
  });
  const [read, measure, search] = [times('read'), times('measure'), times('search')];
  const rest = whole - median(read) - median(measure);
  const share = (100 * median(measure)) / whole;
  return [
    line('read and check', read),
    { ...line('measure (the ledger)', measure), budget: `${MOST_SHARE} %`, isWithin: share <= MOST_SHARE },
    line(
      '  with every beam fitted afresh',
      afresh.map((it) => it.measure),
    ),
    line('search index, while files are written', search),
    line('the rest: start, collections, pages, files', [rest]),
  ];
}

function memoryLine(ours: readonly Build[], bare: readonly Build[]): Line {
  const peak = (builds: readonly Build[]) => Math.max(...builds.map((it) => it.memory));
  const memory = peak(ours);
  return {
    what: 'peak memory, indexer included',
    measured: `${memory.toFixed(0)} MiB`,
    against: `${peak(bare).toFixed(0)} MiB bare`,
    ratio: memory / peak(bare),
    budget: `${MOST_MEMORY} MiB`,
    isWithin: memory <= MOST_MEMORY,
  };
}

function stagesOnce(content: string, pages: string, ...how: string[]): Stages {
  discard(join(pages, 'pagefind'));
  const script = fileURLToPath(new URL('stages.ts', import.meta.url));
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, content, pages, ...how], {
    encoding: 'utf8',
    timeout: LONGEST_STAGES,
  });
  if (status !== 0)
    throw new Error(`the stages could not be timed: ${stderr.trim().split('\n').slice(-5).join(' / ')}`);
  return JSON.parse(stdout.trim().split('\n').at(-1) ?? '');
}
