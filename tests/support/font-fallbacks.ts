/**
 * Faces of the reader's own machine, stretched so that a page sets the same lines before the guide's typefaces have
 * arrived. Writes `src/styles/font-fallbacks.css`: `npx node tests/support/font-fallbacks.ts`.
 *
 * Heights are read from the tables of the files that the pages load. Widths are the mean advance of English text,
 * weight by weight, from the same designs and from the faces that stand in for them (`font-metrics.ts`).
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createFontStack } from '@capsizecss/core';
import { fromFile } from '@capsizecss/unpack/fs';
import { type FaceMetrics, METRICS } from './font-metrics.ts';

/** Where the faces go. */
export const FALLBACKS = new URL('../../src/styles/font-fallbacks.css', import.meta.url);

const packages = new URL('../../node_modules/', import.meta.url);
const SANS = '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2';
const SERIF = '@fontsource/source-serif-4/files/source-serif-4-latin-600-normal.woff2';

interface Fallback {
  family: string;
  weight: string;
  /** The file that the page loads, and the metrics of the weight that it is loaded for. */
  file: string;
  wanted: FaceMetrics;
  /** What stands in, under the names that systems give it and what has the same widths. */
  found: FaceMetrics;
  names: readonly string[];
}

const FACES: readonly Fallback[] = [
  {
    family: 'Arial fitted',
    weight: '400',
    file: SANS,
    wanted: METRICS.sans,
    found: METRICS.arial,
    names: ['Arial', 'Liberation Sans', 'Arimo', 'Helvetica'],
  },
  {
    family: 'Arial fitted',
    weight: '600 700',
    file: SANS,
    wanted: METRICS.sansSemiBold,
    found: METRICS.arialBold,
    names: ['Arial Bold', 'Liberation Sans Bold', 'Arimo Bold', 'Helvetica Bold'],
  },
  {
    family: 'Roboto fitted',
    weight: '400',
    file: SANS,
    wanted: METRICS.sans,
    found: METRICS.roboto,
    names: ['Roboto'],
  },
  {
    family: 'Roboto fitted',
    weight: '600 700',
    file: SANS,
    wanted: METRICS.sansSemiBold,
    found: METRICS.robotoBold,
    names: ['Roboto Bold'],
  },
  {
    family: 'Times fitted',
    weight: '600',
    file: SERIF,
    wanted: METRICS.serifSemiBold,
    found: METRICS.timesBold,
    names: ['Times New Roman Bold', 'Liberation Serif Bold', 'Tinos Bold', 'Times Bold'],
  },
  {
    family: 'Noto Serif fitted',
    weight: '600',
    file: SERIF,
    wanted: METRICS.serifSemiBold,
    found: METRICS.notoSerifBold,
    names: ['Noto Serif Bold'],
  },
  // What a plain Linux has: a fifth wider than the guide's.
  {
    family: 'DejaVu Sans fitted',
    weight: '400',
    file: SANS,
    wanted: METRICS.sans,
    found: METRICS.dejaVuSans,
    names: ['DejaVu Sans'],
  },
  {
    family: 'DejaVu Sans fitted',
    weight: '600 700',
    file: SANS,
    wanted: METRICS.sansSemiBold,
    found: METRICS.dejaVuSansBold,
    names: ['DejaVu Sans Bold'],
  },
  {
    family: 'DejaVu Serif fitted',
    weight: '600',
    file: SERIF,
    wanted: METRICS.serifSemiBold,
    found: METRICS.dejaVuSerifBold,
    names: ['DejaVu Serif Bold'],
  },
];

/** What the library leaves out is 0. */
const percent = (text: string | number = '0%') => `${Number.parseFloat(String(text)).toFixed(2)}%`;

async function face(it: Fallback): Promise<string> {
  const { ascent, descent, lineGap, unitsPerEm } = await fromFile(fileURLToPath(new URL(it.file, packages)));
  const web = { familyName: 'web', xWidthAvg: it.wanted.xWidthAvg, ascent, descent, lineGap, unitsPerEm };
  if (unitsPerEm !== it.wanted.unitsPerEm) throw new Error(`${it.file} has another em than its metrics`);
  const stack = createFontStack([web, it.found], { fontFaceFormat: 'styleObject' });
  const rule = stack.fontFaces[0]?.['@font-face'];
  if (!rule) throw new Error(`no metrics for ${it.family}`);
  const sources = it.names.map((name) => `local("${name}")`);
  const line = `  src: ${sources.join(', ')};`;
  return `@font-face {
  font-family: "${it.family}";
  font-weight: ${it.weight};
${line.length <= 120 ? line : `  src:\n    ${sources.join(',\n    ')};`}
  ascent-override: ${percent(rule.ascentOverride)};
  descent-override: ${percent(rule.descentOverride)};
  line-gap-override: ${percent(rule.lineGapOverride)};
  size-adjust: ${percent(rule.sizeAdjust)};
}
`;
}

/** The style sheet's text. */
export async function fontFallbacks(): Promise<string> {
  const faces = await Promise.all(FACES.map(face));
  return `/* Written by tests/support/font-fallbacks.ts: the reader's own faces with the measures of the guide's. */\n${faces.join('\n')}`;
}

if (import.meta.main) writeFileSync(FALLBACKS, await fontFallbacks());
