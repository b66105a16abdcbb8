import { stringify } from 'yaml';
import { explainedYaml, type Written } from '../../content/schema/explained.ts';
import { type InstrumentKind, instrumentSchema } from '../../content/schema/instrument.ts';

/** Units that displays commonly have. */
const USUAL_UNIT: Readonly<Record<InstrumentKind, string>> = {
  irradiance: 'mW/cm2',
  spectrum: 'nm',
  mains: 'W',
  magnetic: 'uT',
  electric: 'V/m',
  radio: 'mW/m2',
  sound: 'dB(A)',
  flicker: '%',
  length: 'cm',
  temperature: 'C',
};

/** Kinds whose file may say how a sensor misreads bands and oblique light. */
const OF_LIGHT: Partial<Record<InstrumentKind, Written[]>> = {
  irradiance: [
    { key: 'spectralResponse', yaml: 'spectralResponse: { red: 1, nearInfrared: 5 }', isOff: true },
    { key: 'angularResponse', yaml: 'angularResponse: { f2: 2.5 }', isOff: true },
  ],
};

/** An instrument's file: what only its papers say is a gap, marked TODO. */
export function instrumentFile(kind: InstrumentKind, name: string): string {
  const fields: Written[] = [
    { key: 'name', yaml: stringify({ name }) },
    { key: 'measures', yaml: `measures: ${kind}` },
    { key: 'unit', yaml: stringify({ unit: USUAL_UNIT[kind] }) },
    { key: 'range', yaml: 'range: { from: TODO, to: TODO }' },
    { key: 'response', yaml: 'response: TODO' },
    { key: 'resolution', yaml: 'resolution: TODO' },
    {
      key: 'calibrations',
      yaml: 'calibrations:\n  - { date: TODO, validMonths: TODO, relative: TODO, reference: TODO }',
    },
    ...(OF_LIGHT[kind] ?? []),
    kind === 'sound'
      ? { key: 'repeatabilityDecibels', yaml: 'repeatabilityDecibels: 0.5', isOff: true }
      : { key: 'repeatability', yaml: 'repeatability: 0.8', isOff: true },
    { key: 'note', yaml: 'note: Anything else worth knowing.', isOff: true },
  ];
  const head = '# yaml-language-server: $schema=../../.astro/collections/instruments.schema.json\n';
  return `${head}# TODO marks what its papers say: fill it in before a published panel names it.\n\n${explainedYaml(instrumentSchema, fields)}`;
}
