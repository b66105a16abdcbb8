import { fields, meant, problemAt, texts } from '../read/fields.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';

/** An instrument that a session names has a file, and measures what it was used for. */
export const instrumentsFit: Rule = {
  id: 'instruments-fit',
  run: ({ panels, instruments: known }, { shownAs, unread }) => {
    const measures = (id: string) =>
      INSTRUMENT_KINDS.find((kind) => kind === fields(known.get(id)?.data, ['measures'])[0]?.value);
    return [...panels.values()].flatMap((panel) =>
      INSTRUMENT_KINDS.flatMap((kind) =>
        texts(panel, 'sessions', '*', 'instruments', kind).flatMap((field) => {
          const id = field.value;
          const its = measures(id);
          if (unread.has(`${shownAs}/instruments/${id}.yaml`) || (known.has(id) && (its === kind || its === undefined)))
            return [];
          const fitting = [...known.keys()].filter((it) => measures(it) === kind);
          const wanted = `an instrument for ${kind} that has a file in ${shownAs}/instruments: ${fitting.join(', ') || 'there is none yet'}`;
          const hint = its
            ? `"${id}" measures ${its}`
            : (meant(nearest(id, [...known.keys()])) ?? `write ${shownAs}/instruments/${id}.yaml`);
          return [problemAt(panel, field, wanted, hint)];
        }),
      ),
    );
  },
};
