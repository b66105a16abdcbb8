import { fields, problemAt } from '../read/fields.ts';
import type { Problem } from '../schema/problem.ts';
import type { Rule } from './rule.ts';

/** All rows of a grid have the same number of points. */
export const evenGrids: Rule = {
  id: 'even-grids',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) =>
      fields(panel.data, ['sessions', '*', 'grid', 'rows']).flatMap(({ path, value }) => {
        if (!Array.isArray(value) || !Array.isArray(value[0])) return [];
        const wanted = value[0].length;
        return value.flatMap((row: unknown, i): Problem[] =>
          Array.isArray(row) && row.length !== wanted
            ? [
                {
                  ...problemAt(panel, { path: [...path, i], value: row }, `${wanted} points, as in the first row`),
                  found: `${row.length} points`,
                },
              ]
            : [],
        );
      }),
    ),
};
