import { METHODS } from '../../measure/methods.ts';
import { fields, meant, problemAt, texts } from '../read/fields.ts';
import type { Problem } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';

/** Each method has its page, whose history ends with the version that is computed; and each page has its method. */
export const methodPages: Rule = {
  id: 'method-pages',
  run: ({ methods }, { shownAs, unread }) => {
    const ids: readonly string[] = METHODS.map((method) => method.id);
    const problems: Problem[] = [];
    for (const method of METHODS) {
      const source = methods.get(method.id);
      if (!source) {
        const file = `${shownAs}/methods/${method.id}.mdx`;
        if (!unread.has(file)) {
          problems.push({ file, field: '', found: 'no such file', wanted: `the page that explains "${method.name}"` });
        }
        continue;
      }
      const versions = fields(source.data, ['versions', '*', 'version']);
      versions.forEach((field, i) => {
        if (field.value !== i + 1) problems.push(problemAt(source, field, `${i + 1}: versions count up from 1`));
      });
      const last = versions.at(-1);
      if (last && last.value !== method.version) {
        const wanted = `${method.version} as the last version: it is what ${method.file} computes`;
        problems.push(
          problemAt(source, { path: ['versions'], value: last.value }, wanted, 'add the change to the history'),
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
