/** One thing that is wrong in one content file, in the terms of the person who wrote the file. */
export interface Problem {
  /** Path from the repository's top: `content/panels/tern-300/index.md`. */
  file: string;
  /** Counted from 1; undefined where the whole file is concerned. */
  line?: number | undefined;
  /** `sessions[0].grid.rows[1]`, or empty for the file as a whole. */
  field: string;
  /** What stands there. */
  found: string;
  /** What should. */
  wanted: string;
  /** The likely slip, or the next step. */
  hint?: string | undefined;
}

/** `['sessions', 0, 'date']` to `sessions[0].date`. */
export function fieldPath(path: readonly PropertyKey[]): string {
  return path
    .map((part, i) => (typeof part === 'number' ? `[${part}]` : i === 0 ? String(part) : `.${String(part)}`))
    .join('');
}

/** A value in a message: short, on one line, and quoted where it is text. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'an empty field';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  if (typeof value === 'object') return 'a block of fields';
  const text = typeof value === 'string' ? `"${visible(value)}"` : String(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}

const LONGEST = 80;

/** On one line, with control characters spelt out: a terminal would obey them. */
function visible(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/\p{Cc}/gu, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
