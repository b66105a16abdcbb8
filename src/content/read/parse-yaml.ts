import { type Alias, type Document, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, visit } from 'yaml';
import { GAP } from '../schema/gap.ts';

/** What is wrong with YAML that could be read but for fields that stand twice. */
export const TWICE = 'the same field stands twice in one block; keep one';

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
 * Reads YAML 1.2 (core schema: days stay text): the data with the places of its fields, or all syntax errors. Tags that
 * the schema does not know are errors too.
 */
export function parseYaml(text: string): YamlData | { errors: YamlError[] } {
  const { document, counter } = compose(text);
  const line = (offset: number) => counter.linePos(offset).line;
  const errorAt = (offset: number, hint: string): YamlError => ({
    line: line(offset),
    found: lineText(text, line(offset)),
    hint,
  });
  const faults = [...document.errors, ...document.warnings.filter(({ code }) => code === 'TAG_RESOLVE_FAILED')];
  if (faults.length > 0) {
    // What follows the first syntax error is its echo, save for fields that stand twice.
    const first = faults.find((error) => error.code !== 'DUPLICATE_KEY');
    const own = faults.filter((error) => error === first || error.code === 'DUPLICATE_KEY');
    return { errors: own.map((error) => errorAt(error.pos[0], yamlHint(error.code, error.message))) };
  }
  const circle = aliasOfItself(document, text);
  if (circle)
    return { errors: [errorAt(circle.range?.[0] ?? 0, `"*${circle.source}" stands within what it is the name of`)] };
  try {
    return { data: document.toJS(), lineOf: lineFinder(text) };
  } catch (error) {
    // Only an alias can still fail here: its anchor is missing, or aliases of aliases grow without end.
    return { errors: [errorAt(firstAlias(document)?.range?.[0] ?? 0, aliasHint(error))] };
  }
}

function compose(text: string): { document: Document.Parsed; counter: LineCounter } {
  const counter = new LineCounter();
  return { document: parseDocument(text, { lineCounter: counter, prettyErrors: false, logLevel: 'error' }), counter };
}

/**
 * Lines are asked for where something is wrong, which is in few files: the text is gone through again for them then,
 * so that the trees of all the others need not be kept.
 */
export function lineFinder(text: string): YamlData['lineOf'] {
  let composed: ReturnType<typeof compose> | undefined;
  return (path) => {
    composed ??= compose(text);
    return composed.counter.linePos(offsetOf(composed.document.contents, path)).line;
  };
}

function aliasHint(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  if (message.startsWith('Unresolved alias')) return 'a text that starts with * or & needs quotes';
  return message.startsWith('Excessive alias count')
    ? 'names of names grow without end: write the values out'
    : message;
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

/** An alias within the very block that it stands for: what is read of it would have no end. */
function aliasOfItself(document: Document, text: string): Alias | undefined {
  if (!text.includes('*')) return undefined;
  let found: Alias | undefined;
  visit(document, {
    Alias(_key, node, path) {
      const named = node.resolve(document);
      if (!named || !(path as readonly unknown[]).includes(named)) return undefined;
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
    DUPLICATE_KEY: TWICE,
    BAD_INDENT: 'the indentation does not match the lines around it, or a bracket or quote above is not closed',
    MULTILINE_IMPLICIT_KEY: 'a field’s name and colon must stand on one line; a text with ": " in it needs quotes',
    BLOCK_AS_IMPLICIT_KEY: 'a text with ": " in it needs quotes; a block starts on a line of its own',
    MISSING_CHAR: 'a closing quote, bracket or comma is missing, here or above',
    BAD_ALIAS: 'a text that starts with * or & needs quotes',
    BAD_SCALAR_START: 'a text that starts with @, % or ` needs quotes',
    BAD_DQ_ESCAPE: 'a backslash between double quotes has a meaning of its own; put the text between single quotes',
    BLOCK_IN_FLOW:
      'between { } and [ ] commas part the entries, and a dash alone is no value: what was not read is left out',
    TAG_RESOLVE_FAILED: 'a text that starts with ! needs quotes',
  };
  // One code for many causes: what it was that the reader did not expect tells them apart.
  if (code === 'UNEXPECTED_TOKEN') {
    if (/^Unexpected , in flow/.test(message)) return `a value is missing before a comma; ${GAP} holds its place`;
    if (message === 'Unexpected scalar at node end')
      return 'a quote within a text ends it: put the text between quotes of the other kind';
    if (/^Unexpected flow-(?:seq|map)-end/.test(message)) return 'a closing ] or } has no opening one';
  }
  return usual[code] ?? message;
}

/** Where a field stands in the text, in characters from its start. */
function offsetOf(contents: Node | null, path: readonly PropertyKey[]): number {
  let here: unknown = contents;
  let offset = contents?.range?.[0] ?? 0;
  for (const key of path) {
    if (isMap<Node, Node>(here)) {
      const pair = here.items.find((it) => isScalar(it.key) && String(it.key.value) === String(key));
      if (!pair) break;
      offset = pair.key.range?.[0] ?? offset;
      here = pair.value;
    } else if (isSeq<Node>(here)) {
      const item = here.items[Number(key)];
      offset = item?.range?.[0] ?? offset;
      here = item;
    } else break;
  }
  return offset;
}
