import { fields, problemAt } from '../read/fields.ts';
import { valueAt } from '../schema/block.ts';
import type { Problem } from '../schema/problem.ts';
import type { Rule } from './rule.ts';

/** Size classes are told apart by their ids, rise in area, and take every size: the last one has no end. */
export const sizeClasses: Rule = {
  id: 'size-classes',
  run: ({ guide }) =>
    [...guide.values()].flatMap((source) => {
      const list = fields(source.data, ['sizeClasses', '*']);
      const seen = new Set<unknown>();
      return list.flatMap(({ path, value }, i) => {
        const problems: Problem[] = [];
        const id = valueAt(value, ['id']);
        const area = valueAt(value, ['upToArea']);
        const before = valueAt(list[i - 1]?.value, ['upToArea']);
        const at = { path: [...path, 'upToArea'], value: area };
        const isLast = i === list.length - 1;
        if (seen.has(id))
          problems.push(
            problemAt(source, { path: [...path, 'id'], value: id }, 'an id of its own: it is part of an address'),
          );
        if (id !== undefined) seen.add(id);
        if (!isLast && area === undefined)
          problems.push(problemAt(source, at, 'an area in cm2; only the last class is open-ended'));
        if (isLast && area !== undefined)
          problems.push(problemAt(source, at, 'no upper area: the last class takes all that is larger'));
        if (typeof before === 'number' && typeof area === 'number' && area <= before) {
          problems.push(problemAt(source, at, `more than ${before}, the area of the class before`));
        }
        return problems;
      });
    }),
};
