import { METHODS } from '../../measure/methods.ts';
import { fields, meant, problemAt, texts } from '../read/fields.ts';
import type { Problem } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';

const HINT = 'add the change to the history, or leave it out of a text of your own: then the product’s stands';

/**
 * The history in a method's page ends with the version that is computed, and each page has its method. That each method
 * has its page is the product's own matter.
 */
export const methodPages: Rule = {
  id: 'method-pages',
  run: ({ methods }) => {
    const ids: readonly string[] = METHODS.map((method) => method.id);
    const problems: Problem[] = [];
    for (const method of METHODS) {
      const source = methods.get(method.id);
      if (!source) continue;
      const versions = fields(source.data, ['versions', '*', 'version']);
      versions.forEach((field, i) => {
        if (field.value !== i + 1) problems.push(problemAt(source, field, `${i + 1}: versions count up from 1`));
      });
      const last = versions.at(-1);
      if (last && last.value !== method.version) {
        const wanted = `${method.version} as the last version: it is what ${method.file} computes`;
        problems.push(problemAt(source, { path: ['versions'], value: last.value }, wanted, HINT));
      }
      for (const field of fields(source.data, ['versions', '*', 'was'])) {
        if (field.path[1] === versions.length - 1)
          problems.push(
            problemAt(source, field, 'an earlier version: of the last one the page itself tells', 'take it out'),
          );
      }
      for (const field of texts(source, 'related', '*')) {
        if (!ids.includes(field.value))
          problems.push(problemAt(source, field, `one of: ${ids.join(', ')}`, meant(nearest(field.value, ids))));
      }
    }
    for (const [id, source] of methods) {
      if (ids.includes(id)) continue;
      const hint = meant(nearest(id, ids));
      problems.push({
        file: source.file,
        field: '',
        found: `a page for "${id}", which nothing computes`,
        wanted: `a name from the registry of methods: ${ids.join(', ')}`,
        ...(hint && { hint }),
      });
    }
    return problems;
  },
};
