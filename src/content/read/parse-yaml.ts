import { CORE_SCHEMA, load, YAMLException } from 'js-yaml';
import { type Alias, type Document, isMap, isSeq, LineCounter, type Node, parseDocument, visit } from 'yaml';

/** One syntax error, with its line in the YAML text, from 1. */
export interface YamlError {
  line: number;
  found: string;
  hint: string;
}

/** YAML that was read, and where each field stands in it. */
export interface YamlData {
  data: unknown;
  /** Line, from 1, of a field, or of the nearest block around it. */
  lineOf(path: readonly PropertyKey[]): number;
}

/**
 * Reads YAML 1.2 (core schema: days stay text). Two readers share the work: a fast one, the one that Astro uses
 * too, reads what is sound, which is nearly every file of every build; only where something is wrong does the
 * other one, several times slower, find all syntax errors and the places of fields. Files with aliases or
 * with keys that are blocks go to it at once: it refuses aliases that grow without end, and has names for such keys.
 */
export function parseYaml(text: string): YamlData | { errors: YamlError[] } {
  if (RARE.test(text)) return parseWithPlaces(text);
  let data: unknown;
  try {
    data = load(text, { schema: CORE_SCHEMA });
  } catch (error) {
    const result = parseWithPlaces(text);
    // Only over tags do the two disagree here, and content has no use for them.
    return 'errors' in result ? result : { errors: [fastError(text, error)] };
  }
  let places: YamlData | undefined;
  return {
    data,
    lineOf: (path) => {
      if (!places) {
        const result = parseWithPlaces(text);
        places = 'errors' in result ? { data, lineOf: () => result.errors[0]?.line ?? 1 } : result;
      }
      return places.lineOf(path);
    },
  };
}

/** The data alone, of a text that is tried out; undefined where it can't be read. */
export function tryYaml(text: string): { data: unknown } | undefined {
  if (RARE.test(text)) {
    const result = parseWithPlaces(text);
    return 'errors' in result ? undefined : result;
  }
  try {
    return { data: load(text, { schema: CORE_SCHEMA }) };
  } catch {
    return undefined;
  }
}

/** What the two read differently: anchors and aliases, keys that are no plain text, -.5 and 0b11. */
const RARE = /(?:^|[\s[{,:-])(?:[&*]\S|\?(?:\s|$)|[-+]\.\d|0b[01])|^\s*[[{]|^\s*(?:null|~)?\s*:/m;

function fastError(text: string, error: unknown): YamlError {
  if (!(error instanceof YAMLException)) throw error;
  const line = (error.mark?.line ?? 0) + 1;
  return { line, found: lineText(text, line), hint: error.reason };
}

function parseWithPlaces(text: string): YamlData | { errors: YamlError[] } {
  const counter = new LineCounter();
  const document = parseDocument(text, { lineCounter: counter, prettyErrors: false, logLevel: 'error' });
  const line = (offset: number) => counter.linePos(offset).line;
  const errorAt = (offset: number, hint: string): YamlError => ({
    line: line(offset),
    found: lineText(text, line(offset)),
    hint,
  });
  if (document.errors.length > 0) {
    // What follows the first syntax error is its echo, save for fields that stand twice.
    const first = document.errors.find((error) => error.code !== 'DUPLICATE_KEY');
    const own = document.errors.filter((error) => error === first || error.code === 'DUPLICATE_KEY');
    return { errors: own.map((error) => errorAt(error.pos[0], yamlHint(error.code, error.message))) };
  }
  try {
    const data: unknown = document.toJS();
    return { data, lineOf: (path) => line(offsetOf(document.contents as Node | null, path)) };
  } catch (error) {
    // Only an alias can still fail here: its anchor is missing, or aliases of aliases grow without end.
    return { errors: [errorAt(firstAlias(document)?.range?.[0] ?? 0, aliasHint(error))] };
  }
}

function aliasHint(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.startsWith('Unresolved alias') ? 'a text that starts with * or & needs quotes' : message;
}

function firstAlias(document: Document): Alias | undefined {
  let found: Alias | undefined;
  visit(document, {
    Alias(_key, node) {
      found = node;
      return visit.BREAK;
    },
  });
  return found;
}

function lineText(yaml: string, line: number): string {
  const text = (yaml.split('\n')[line - 1] ?? '').trim().slice(0, 80);
  return text === '' ? 'the end of a block or of the file' : `"${text}"`;
}

/** What the YAML reader says, with the usual cause where there is one. */
function yamlHint(code: string, message: string): string {
  const usual: Record<string, string> = {
    TAB_AS_INDENT: 'indent with spaces, not with tabs',
    DUPLICATE_KEY: 'the same field stands twice in one block; keep one',
    BAD_INDENT: 'the indentation does not match the lines around it, or a bracket or quote above is not closed',
    MULTILINE_IMPLICIT_KEY: 'a field’s name and colon must stand on one line; a text with ": " in it needs quotes',
    BLOCK_AS_IMPLICIT_KEY: 'a text with ": " in it needs quotes; a block starts on a line of its own',
    MISSING_CHAR: 'a closing quote, bracket or comma is missing, here or above',
    BAD_ALIAS: 'a text that starts with * or & needs quotes',
  };
  return usual[code] ?? message;
}

function offsetOf(contents: Node | null, path: readonly PropertyKey[]): number {
  let here: unknown = contents;
  let offset = contents?.range?.[0] ?? 0;
  for (const key of path) {
    if (isMap(here)) {
      const pair = here.items.find((it) => String((it.key as { value?: unknown } | null)?.value) === String(key));
      if (!pair) break;
      offset = (pair.key as Node | null)?.range?.[0] ?? offset;
      here = pair.value;
    } else if (isSeq(here)) {
      here = here.items[Number(key)];
      offset = (here as Node | undefined)?.range?.[0] ?? offset;
    } else break;
  }
  return offset;
}
