import { stringify } from 'yaml';
import { explainedYaml, type Written } from '../../content/schema/explained.ts';
import { FORMAT } from '../../content/schema/format.ts';
import { guideSchema } from '../../content/schema/guide.ts';
import { procedureVersions } from '../../measure/irradiance/bench-procedure.ts';
import type { Answers } from './answers.ts';

/** Classes to begin with; areas in cm². Our own choice, to be changed to what the tester's panels are. */
const SIZE_CLASSES = `sizeClasses:
  - { id: small, name: Small, upToArea: 700, description: Up to about 20 by 35 cm. }
  - { id: medium, name: Medium, upToArea: 2000, description: Up to about 25 by 80 cm. }
  - { id: large, name: Large, description: All that is larger. }`;

/** guide.yaml of a new guide: every field there is, with its meaning; what may be left out is commented out. */
export function guideFile(answers: Answers, today: string): string {
  const { title, tagline, publisher, site, about, disclosure, currency, mainsFrequency } = answers;
  const { tariff, tariffSource, distance } = answers;
  const own = (data: object) => stringify(data, { lineWidth: 110, blockQuote: 'folded' });
  const newest = procedureVersions().at(-1);
  const fields: Written[] = [
    { key: 'format', yaml: `format: ${FORMAT}` },
    { key: 'title', yaml: own({ title }) },
    { key: 'tagline', yaml: own({ tagline }) },
    { key: 'publisher', yaml: own({ publisher }) },
    { key: 'site', yaml: own({ site }) },
    { key: 'about', yaml: own({ about }) },
    { key: 'disclosure', yaml: own({ disclosure }) },
    { key: 'disclosureShort', yaml: 'disclosureShort: Who pays, in at most 120 letters.', isOff: true },
    { key: 'currency', yaml: `currency: ${currency}` },
    {
      key: 'rates',
      yaml: `rates:\n  - { currency: ${currency === 'GBP' ? 'EUR' : 'GBP'}, rate: 1.15, date: ${today}, source: Reference rate of your central bank }`,
      isOff: true,
    },
    { key: 'tariff', yaml: own({ tariff: { price: tariff, date: today, source: tariffSource } }) },
    { key: 'referenceDistance', yaml: own({ referenceDistance: distance }) },
    { key: 'methodVersion', yaml: `methodVersion: ${newest}` },
    { key: 'distanceSetting', yaml: 'distanceSetting: 2 mm' },
    { key: 'edgeSetting', yaml: 'edgeSetting: 1 mm' },
    { key: 'mainsFrequency', yaml: `mainsFrequency: ${mainsFrequency}` },
    { key: 'rankBy', yaml: 'rankBy: frame', isOff: true },
    { key: 'sizeClasses', yaml: SIZE_CLASSES },
  ];
  const head = '# yaml-language-server: $schema=../.astro/collections/guide.schema.json\n';
  const how = '# What holds for the whole guide. Lines with ## explain; take the single # away to use a field.\n\n';
  return head + how + explainedYaml(guideSchema, fields);
}
