/** What stands in a line of the table of limits beside its figures: what it is, and what it is held against. */
import type { PrecautionRange } from '../../measure/exposure/building-biology.ts';
import { roundedTo } from '../../measure/exposure/cautious-end.ts';
import type { FieldResult } from '../../measure/exposure/field-results.ts';
import { flickerLines, ROW_EDGE, SLOW_DEPTH } from '../../measure/exposure/flicker-lines.ts';
import type { FlickerLine } from '../../measure/exposure/flicker-results.ts';
import type { LimitResult } from '../../measure/exposure/index.ts';
import { LONG_EXPOSURE } from '../../measure/exposure/infrared.ts';
import type { PrecautionResult } from '../../measure/exposure/precaution-results.ts';
import { SLOPE_TO } from '../../measure/exposure/reference-levels.ts';
import { RETINA_LIMITS } from '../../measure/exposure/retina.ts';
import { SKIN_LIMIT_AT_END, SKIN_TIME } from '../../measure/exposure/skin-limit.ts';
import { isFigure } from '../../measure/figure.ts';
import type { Mode } from '../../measure/modes.ts';
import { number } from '../../measure/numbers.ts';
import { fixed, listed } from '../format.ts';
import { amount, capital, hertzWords } from './amounts.ts';
import { CITATIONS } from './citations.ts';
import { FIELD_NAMES, MILLIGAUSS } from './field-words.ts';
import { RANGE_WORDS } from './precaution.ts';

/** 1 mW/cm² is 10 W/m², in which the standard has its limits. */
const WATTS_PER_SQUARE_METRE = 10;

/** Modes of the light behind a comma. */
const MODES: Readonly<Record<Mode, string>> = {
  combined: 'both channels',
  red: 'red alone',
  'near-infrared': 'near-infrared alone',
};

const LINES: Readonly<Record<FlickerLine, string>> = { lowRisk: 'low-risk line', noEffect: 'no-effect line' };

/** What is held against a limit, without where it was read: "infrared at the eye". */
export function heldName(result: LimitResult): string {
  switch (result.hazard) {
    case 'infrared-share':
    case 'infrared-time':
      return 'infrared at the eye';
    case 'skin':
      return `skin, under ${SKIN_TIME} s`;
    case 'retina':
      return isFigure(result.figure) ? `retina, ${MODES[result.mode]}` : 'retina';
    case 'flicker':
      return `flicker, ${MODES[result.mode]}`;
    case 'pulsing':
      return `pulsing, ${MODES[result.mode]}`;
    case 'field':
    case 'precaution':
      return FIELD_NAMES[result.reading.kind];
    case 'sound':
      return 'sound of the panel alone';
  }
}

/** Several that have no share for one reason: "Flicker, both channels and red alone; retina". */
export function unheldNames(results: readonly LimitResult[]): string {
  const parts = results.map((it) => {
    const [name = '', ...more] = heldName(it).split(', ');
    return { name, more: 'distance' in it ? `${number(it.distance)} cm` : more.join(', ') };
  });
  const words = [...Map.groupBy(parts, (it) => it.name)].map(([name, own]) =>
    [name, listed([...new Set(own.map((it) => it.more))].filter((it) => it !== ''))]
      .filter((it) => it !== '')
      .join(', '),
  );
  return capital(words.some((it) => it.includes(', ')) ? words.join('; ') : listed(words));
}

/** A limit in a cell. */
export interface LimitCell {
  /** `10 mW/cm²` */
  text: string;
  /** The same in the unit that some readers prefer. */
  other?: string;
  /** What it is for: "for long exposures". */
  note?: string;
}

/** The limit that a result is held against; undefined where it is held against none. */
export function limitCell(result: LimitResult): LimitCell | undefined {
  switch (result.hazard) {
    case 'infrared-share':
    case 'infrared-time':
      return { text: `${fixed(LONG_EXPOSURE / WATTS_PER_SQUARE_METRE, 0)} mW/cm²`, note: 'for long exposures' };
    case 'skin':
      return {
        text: `${fixed(SKIN_LIMIT_AT_END / WATTS_PER_SQUARE_METRE, 0)} mW/cm²`,
        note: `at ${SKIN_TIME} s; none for longer`,
      };
    case 'flicker':
      return flickerCell(result);
    case 'pulsing':
      return result.limit && { text: `${SLOW_DEPTH} %`, note: `below ${ROW_EDGE} Hz, against seizures` };
    case 'field':
      return fieldCell(result);
    case 'precaution':
      return {
        text: amount(result.line, unitOf(result)),
        ...(result.reading.kind === 'magnetic' && { other: `${number(MILLIGAUSS * result.line)} mG` }),
      };
    case 'retina':
      return retinaCell(result);
    case 'sound':
      return undefined;
  }
}

function retinaCell({ mode, angle }: Extract<LimitResult, { hazard: 'retina' }>): LimitCell | undefined {
  if (angle === undefined) return undefined;
  return {
    text: `${fixed(roundedTo(RETINA_LIMITS[mode] / angle, 'low'), 0)} W/(m² sr)`,
    note: mode === 'combined' ? 'at 10 s' : 'weak stimulus',
  };
}

function flickerCell({ line, frequency }: Extract<LimitResult, { hazard: 'flicker' }>): LimitCell | undefined {
  if (!isFigure(frequency) || !(frequency.value > 0)) return undefined;
  const height = flickerLines(frequency.value)[line];
  return height === 'no-limit' ? undefined : { text: amount(height, '%'), note: LINES[line] };
}

const unitOf = ({ reading: { on } }: Pick<PrecautionResult, 'reading'>) => (isFigure(on) ? on.unit : '1');

function fieldCell(result: FieldResult): LimitCell {
  const { levels, reading } = result;
  const levelText = (factor: number, unit: string) =>
    [levels.strict, ...(levels.mild ? [levels.mild] : [])]
      .map(({ value, frequency }) => {
        const where =
          frequency === undefined
            ? ''
            : frequency.from === 'driver'
              ? ` above ${hertzWords(SLOPE_TO)}`
              : ` at ${hertzWords(frequency.hertz)}`;
        return `${fixed(factor * value, Number.isInteger(factor * value) ? 0 : 1)} ${unit}${where}`;
      })
      .join(', ');
  return {
    text: levelText(1, unitOf(result)),
    ...(reading.kind === 'magnetic' && { other: levelText(MILLIGAUSS, 'mG') }),
    ...(reading.kind === 'radio' && { note: 'the lowest level there is' }),
  };
}

/** Who published a limit, and when: `IEC 62471:2006`, `ICNIRP 2010`. */
export function publishedBy({ limit }: LimitResult): string | undefined {
  if (limit === undefined) return undefined;
  const { source, year } = CITATIONS[limit];
  return /\d/.test(source) ? `${source}:${year}` : `${source} ${year}`;
}

/** The guideline's own words for a reading, with how far they reach: "at most “Slight anomaly”". */
export function guidelineWords({ range, reading: { on } }: PrecautionResult): string | undefined {
  return range && rangeName(range, isFigure(on) ? on.bound : undefined);
}

function rangeName(range: PrecautionRange, bound: 'below' | 'above' | undefined): string {
  return `${bound === 'below' ? 'at most ' : bound === 'above' ? 'at least ' : ''}“${RANGE_WORDS[range]}”`;
}

/** The sentence over the table, for what lies over its limit with the uncertainty counted against the reader. */
export function overSentence(over: ReadonlyArray<readonly [name: string, multiple: number | undefined]>): string {
  const names = [...new Set(over.map(([name]) => name))];
  const told = names.map((name) => {
    const multiples = over.filter((it) => it[0] === name).map((it) => it[1]);
    const known = multiples.filter((it) => it !== undefined);
    return known.length < multiples.length
      ? `${name}, how far is not known`
      : `${name}, up to ${number(roundedTo(Math.max(...known), 'high'), 3)} times`;
  });
  return `Over a limit, the uncertainty counted against you: ${told.join('; ')}.`;
}
