import { stringify } from 'yaml';
import { FORMAT } from '../../content/schema/format.ts';
import { guideSchema } from '../../content/schema/guide.ts';
import { fileText } from '../../content/templates/file-text.ts';
import { jsonSchemaOf } from '../../content/templates/json-schema.ts';
import { inFlow } from '../../content/templates/yaml-text.ts';
import { procedureVersions } from '../../measure/irradiance/bench-procedure.ts';
import type { Answers } from './answers.ts';

/** Classes to begin with; areas in cm². Our own choice, to be changed to what the tester's panels are. */
const SIZE_CLASSES = [
  { id: 'small', name: 'Small', upToArea: 700, description: 'Up to about 20 by 35 cm.' },
  { id: 'medium', name: 'Medium', upToArea: 2000, description: 'Up to about 25 by 80 cm.' },
];
const LAST_CLASS = { id: 'large', name: 'Large', description: 'All that is larger.' };

/** The last class as a file of all fields has it: what it has to leave out would be offered there. */
const LAST_AT_LENGTH = new RegExp(`(?:^ {2}#.*\\n)*^ {2}- id: ${LAST_CLASS.id}\\n(?:^ {4}.*\\n?)+`, 'm');

/** Texts that go over several lines. */
const LONG = ['about', 'disclosure'] as const;

/** guide.yaml of a new guide: every field there is, with its meaning; what may be left out is commented out. */
export function guideFile(answers: Answers, today: string): string {
  const { title, tagline, publisher, site, about, disclosure, currency, mainsFrequency } = answers;
  const { tariff, tariffSource, distance } = answers;
  const values = {
    ...{ format: FORMAT, title, tagline, publisher, site, about, disclosure, currency, mainsFrequency },
    tariff: { price: tariff, date: today, source: tariffSource },
    ...{ referenceDistance: distance, methodVersion: procedureVersions().at(-1) },
    // What spacer rods and a steel rule are good for. Common practice, no source.
    ...{ distanceSetting: '2 mm', edgeSetting: '1 mm' },
    sizeClasses: [...SIZE_CLASSES, LAST_CLASS],
  };
  const text = fileText(jsonSchemaOf(guideSchema), {
    values,
    offered: {
      disclosureShort: 'Who pays for it, in one line.',
      rates: [
        { currency: currency === 'GBP' ? 'EUR' : 'GBP', rate: 1.15, date: today, source: 'Reference rate of the day' },
      ],
    },
  });
  const head = '# yaml-language-server: $schema=../.astro/collections/guide.schema.json\n';
  return LONG.reduce(
    (all, key) =>
      all.replace(new RegExp(`^${key}: .*\\n`, 'm'), () => stringify({ [key]: answers[key] }, { lineWidth: 110 })),
    head + text.replace(LAST_AT_LENGTH, `  - ${inFlow(LAST_CLASS)}\n`),
  );
}
