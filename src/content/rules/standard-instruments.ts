import { type Field, meant, problemAt, texts } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import type { Problem } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';
import { statedQuantities } from './stated-quantities.ts';

/** The meter that reads a check standard has a file. */
export const standardInstruments: Rule = {
  id: 'standard-instruments',
  run: ({ standards, instruments }, { shownAs, unread }) =>
    [...standards.values()].flatMap((standard) =>
      texts(standard, 'instrument').flatMap((field) => {
        const id = field.value;
        const meter = instruments.get(id);
        if (meter) return unclearQuantity(standard, meter, field);
        if (unread.has(`${shownAs}/instruments/${id}.yaml`)) return [];
        const known = [...instruments.keys()];
        const wanted = `an instrument that has a file in ${shownAs}/instruments: ${known.join(', ') || 'there is none yet'}`;
        const hint = meant(nearest(id, known)) ?? `write ${shownAs}/instruments/${id}.yaml`;
        return [problemAt(standard, field, wanted, hint)];
      }),
    ),
};

/** Which quantity of its meter a standard is read with has to be said where there are several, and has to be one of them. */
function unclearQuantity(standard: Source, meter: Source, field: Field): Problem[] {
  const kinds = statedQuantities(meter).map((it) => it.kind);
  const [reads] = texts(standard, 'reads');
  if (reads) {
    if (kinds.length === 0 || kinds.some((it) => it === reads.value)) return [];
    return [problemAt(standard, reads, `what ${meter.file} reads: ${kinds.join(', ')}`)];
  }
  if (kinds.length < 2) return [];
  const wanted = `which of its quantities as well: ${kinds.join(', ')}`;
  return [problemAt(standard, field, wanted, `add reads: ${kinds[0]}`)];
}
