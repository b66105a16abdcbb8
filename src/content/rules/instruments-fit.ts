import { meant, problemAt, texts } from '../read/fields.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';
import { statedQuantities } from './stated-quantities.ts';

/** An instrument that a session names has a file, and measures what it was used for. */
export const instrumentsFit: Rule = {
  id: 'instruments-fit',
  run: ({ panels, instruments: known }, { shownAs, unread }) => {
    const measures = (id: string) => statedQuantities(known.get(id)).map((it) => it.kind);
    return [...panels.values()].flatMap((panel) =>
      INSTRUMENT_KINDS.flatMap((kind) =>
        texts(panel, 'sessions', '*', 'instruments', kind).flatMap((field) => {
          const id = field.value;
          const its = measures(id);
          if (
            unread.has(`${shownAs}/instruments/${id}.yaml`) ||
            (known.has(id) && (its.includes(kind) || its.length === 0))
          )
            return [];
          const fitting = [...known.keys()].filter((it) => measures(it).includes(kind));
          const wanted = `an instrument for ${kind} that has a file in ${shownAs}/instruments: ${fitting.join(', ') || 'there is none yet'}`;
          const hint =
            its.length > 0
              ? `"${id}" measures ${its.join(', ')}`
              : (meant(nearest(id, [...known.keys()])) ?? `write ${shownAs}/instruments/${id}.yaml`);
          return [problemAt(panel, field, wanted, hint)];
        }),
      ),
    );
  },
};
