/**
 * Writes the data package of the demonstration's second tester, who read three of the panels on a bench of their own:
 *
 *     npx node tests/support/make-other-tester.ts
 *
 * Their readings are the demonstration's own, each moved by the errors of another bench: a calibration off by 1.5 %, a
 * scatter of 0.8 % and, for one panel, a spacer that set it nearer, which nobody noticed and which reads 22 % more. All
 * else (figures, intervals, tables) is what this program makes of them.
 */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isScalar, parseDocument, visit } from 'yaml';
import { writeFiles } from '../../src/build/write-files.ts';
import { readContent } from '../../src/content/read/read-content.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { seededRandom } from '../../src/measure/random.ts';
import { packageFiles } from '../../src/site/export/tables/package-files.ts';
import { TODAY } from './content-folder.ts';
import { DEMO_SOURCE } from './demo-folder.ts';

/** Panels that they have read, each with what its light reads of what it should. */
const READ = { 'kelpwright-gannet': 1, 'fennimarsh-reed': 1.22, 'ruddlestone-r60': 1 } as const;
const CALIBRATION = 0.985;
const SCATTER = 0.008;

/** Blocks of light in a session's front matter. */
const LIGHT = new Set(['peak', 'grid', 'distances', 'beyond']);

/** Writes their package into a folder. */
export async function makeOtherTester(target: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'other-tester-'));
  try {
    layContent(folder);
    const { content, problems } = readContent({ folder, today: TODAY });
    if (!content) throw new Error(JSON.stringify(problems, null, 1));
    const ledger = buildLedger(content, { today: TODAY });
    const files = packageFiles(ledger);
    rmSync(target, { recursive: true, force: true });
    mkdirSync(target, { recursive: true });
    await writeFiles(
      files.map((it) => ({ ...it, path: it.path.replace(/^data\//, '') })),
      target,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function layContent(folder: string): void {
  cpSync(DEMO_SOURCE, folder, { recursive: true });
  for (const it of ['others', 'standards']) rmSync(join(folder, it), { recursive: true, force: true });
  for (const slug of readdirSync(join(folder, 'panels'))) {
    const index = readdirSync(join(folder, 'panels', slug)).find((it) => /^index\.mdx?$/.test(it));
    if (!(slug in READ) || !index) rmSync(join(folder, 'panels', slug), { recursive: true });
    else moveReadings(join(folder, 'panels', slug, index), slug as keyof typeof READ);
  }
  renameSync(join(folder, 'instruments/bench-thermopile.yaml'), join(folder, 'instruments/pier-thermopile.yaml'));
  const guide = parseDocument(readFileSync(join(folder, 'guide.yaml'), 'utf8'));
  guide.set('title', 'Salt Pier panel readings');
  guide.set('publisher', 'Salt Pier Repair Café');
  guide.set('site', 'https://panels.saltpier.example');
  guide.set('about', 'The repair café on the pier reads panels that come in. The café, like all of this, is invented.');
  guide.delete('agreement');
  writeFileSync(join(folder, 'guide.yaml'), guide.toString());
}

function moveReadings(path: string, slug: keyof typeof READ): void {
  const random = seededRandom(slug.length * 7919 + 15);
  const [, front = '', body = ''] = /^---\n(.*?)\n---\n(.*)$/s.exec(readFileSync(path, 'utf8')) ?? [];
  const document = parseDocument(front.replaceAll('bench-thermopile', 'pier-thermopile'));
  const moved = (written: unknown): unknown => {
    const [, number, unit = ''] = /^(\d+(?:\.\d+)?)( .*)?$/.exec(String(written)) ?? [];
    if (number === undefined) return written;
    const value = Number(number) * CALIBRATION * READ[slug] * (1 + SCATTER * random.normal());
    const decimals = /\.(\d+)/.exec(number)?.[1]?.length ?? 0;
    return unit === '' ? Number(value.toFixed(decimals)) : `${value.toFixed(decimals)}${unit}`;
  };
  visit(document, {
    Pair(_, { key }) {
      // Where a reading was taken is no reading.
      if (isScalar(key) && ['distance', 'past', 'inset', 'edge'].includes(String(key.value))) return visit.SKIP;
      return undefined;
    },
    Scalar(key, node, ancestors) {
      const names = ancestors.flatMap((it) => ('key' in it && isScalar(it.key) ? [String(it.key.value)] : []));
      // A peak of the spectrum is none of the light.
      const isLight = names.includes('sessions') && !names.includes('wavelengths') && names.some((it) => LIGHT.has(it));
      if (key !== 'key' && isLight) node.value = moved(node.value);
    },
  });
  writeFileSync(path, `---\n${document.toString()}---\n${body}`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const content of ['content', 'tests/demo/content']) await makeOtherTester(join(content, 'others/salt-pier'));
}
