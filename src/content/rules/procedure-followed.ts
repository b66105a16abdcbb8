import { ASKS_BEYOND_FROM, BEYOND_PLACES_EACH } from '../../measure/irradiance/bench-procedure.ts';
import { fields, problemAt } from '../read/fields.ts';
import { acceptedReadings } from '../read/grid-points.ts';
import { beyondReadings } from '../schema/beyond.ts';
import type { Rule } from './rule.ts';

/** A session says that it followed a version of the procedure; then it has the readings that this version asks for. */
export const procedureFollowed: Rule = {
  id: 'procedure-followed',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) =>
      fields(panel.data, ['sessions', '*']).flatMap(({ path, value }) => {
        const version = fields(value, ['methodVersion'])[0]?.value;
        if (version !== ASKS_BEYOND_FROM || isUnfinished(value)) return [];
        const [written] = fields(value, ['beyond']);
        const read = beyondReadings.safeParse(written?.value);
        // What is wrong with the readings themselves, their schema says.
        if (written && !read.success) return [];
        const accepted = (read.data ?? []).filter((it) => acceptedReadings(it.on).length > 0);
        const past = (...edges: string[]) => accepted.filter((it) => edges.includes(it.edge)).length;
        const [aside, above] = [past('left', 'right'), past('top', 'bottom')];
        if (aside >= BEYOND_PLACES_EACH && above >= BEYOND_PLACES_EACH) return [];
        const wanted = `readings at ${BEYOND_PLACES_EACH} places past the left or right edge and ${BEYOND_PLACES_EACH} past the top or bottom one, as version ${version} of the bench procedure asks`;
        const hint = `take the readings, or write methodVersion: ${ASKS_BEYOND_FROM - 1}; what was read past the edges is used under it too`;
        const field = { path: [...path, 'beyond'], value: written?.value };
        const found = written ? `readings at ${aside} and ${above} places` : 'nothing';
        return [{ ...problemAt(panel, field, wanted, hint), found }];
      }),
    ),
};

/** Its light is still to be read, or was read in a session that answers for itself. */
const isUnfinished = (session: unknown) =>
  fields(session, ['draft']).some(({ value }) => value === true) || fields(session, ['carried', 'light']).length > 0;
