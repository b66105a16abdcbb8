import { problemAt, texts } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import type { Problem } from '../schema/problem.ts';
import type { Rule } from './rule.ts';

/** An old name leads to one entry, and is nobody's name now. */
export const formerNames: Rule = {
  id: 'former-names',
  run: ({ panels, makers }) => [...problemsOf(panels, 'panel'), ...problemsOf(makers, 'maker')],
};

function problemsOf(entries: ReadonlyMap<string, Source>, kind: string): Problem[] {
  const claimed = new Map<string, string>();
  return [...entries].flatMap(([id, source]) =>
    texts(source, 'formerly', '*').flatMap((field): Problem[] => {
      const { value } = field;
      if (value === id) return [problemAt(source, field, `a name that this ${kind} no longer has`, 'take it out')];
      const living = entries.get(value);
      if (living) {
        return [problemAt(source, field, `a name that no ${kind} has now; ${living.file} has it`, 'take it out')];
      }
      const other = claimed.get(value);
      claimed.set(value, source.file);
      if (other === undefined) return [];
      return [problemAt(source, field, `a name that stands here alone; ${other} has it too`)];
    }),
  );
}
