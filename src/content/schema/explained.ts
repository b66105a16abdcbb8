import type { z } from 'zod';
import { keysAt, meaningAt } from './inspect.ts';

/** Columns that comments in a file fit into. */
const COLUMNS = 100;

/** One field of a file that is written for a tester to fill in. */
export interface Written {
  key: string;
  /** Lines of YAML, the key included. */
  yaml: string;
  /** Kept as a comment: it may be left out. */
  isOff?: boolean;
}

/**
 * YAML in which each field is explained above it, in its schema's own words. Fields that nothing is given for are named
 * at the end, so that none is missing where a schema has grown.
 *
 * @param schema of a block of fields
 * @param fields in the order in which they are to stand
 */
export function explainedYaml(schema: z.ZodType, fields: readonly Written[]): string {
  const rest = keysAt(schema, []).filter((key) => fields.every((it) => it.key !== key));
  const all = [...fields, ...rest.map((key) => ({ key, yaml: `${key}:`, isOff: true }))];
  return all
    .map(({ key, yaml, isOff }) => {
      const lines = yaml.trimEnd().split('\n');
      return [...commented(meaningAt(schema, [key]) ?? ''), ...(isOff ? lines.map((it) => `# ${it}`) : lines)].join(
        '\n',
      );
    })
    .join('\n\n')
    .concat('\n');
}

/** A sentence as lines of comment; two signs tell it from a field that is left out. */
function commented(text: string): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < COLUMNS) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(`## ${word}`);
  }
  return lines;
}
