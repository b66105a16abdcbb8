import { isBlock, ownField } from '../schema/block.ts';
import { GAP } from '../schema/gap.ts';
import { comment, explanation } from './explanation.ts';
import { exampleOf, type JsonSchema, neededIn } from './json-schema.ts';
import { inFlow } from './yaml-text.ts';

/** What is known of a new file. */
export interface Filling {
  /** What stands in it, in the shape of the file. */
  values: Readonly<Record<string, unknown>>;
  /**
   * Fields that leave a gap where nothing is known, though the file can do without: `claims.power`; entries of lists are
   * not counted. What the schema needs leaves one anyway.
   */
  asked?: readonly string[];
  /** Fields that can't stand in this file. */
  without?: readonly string[];
  /** Fields of another form of the file, which are explained and not offered. */
  apart?: readonly string[];
  /** What is offered for a field in place of the schema's example. */
  offered?: Readonly<Record<string, unknown>>;
}

interface Place {
  filling: Filling;
  /** Explanations that stand in the file already. */
  said: Set<string>;
  path: string;
  indent: string;
}

const LEGEND = `${GAP} marks what is still to be filled in; the command check lists it. A field after a # without a space may be left out: take the # away to state it. All else after a # explains.`;

/** A line for people that a field's explanation does not fit into: flow maps up to here, blocks beyond. */
const WIDEST_FLOW = 110;

/**
 * A new file in YAML: every field that its schema has, in the schema's order, each with what it means, its unit and an
 * example. What is known stands there, what is needed is a marked gap, all else is commented out (`#field`, with no space;
 * explanations have one).
 */
export function fileText(schema: JsonSchema, filling: Filling): string {
  const place: Place = { filling, said: new Set(), path: '', indent: '' };
  return `${comment(LEGEND, '').join('\n')}\n\n${blockFields(schema, filling.values, place)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

/** The fields of a block, the lines of each. */
function blockFields(schema: JsonSchema, values: unknown, place: Place): string[][] {
  const needed = neededIn(schema);
  return Object.entries(schema.properties ?? {}).flatMap(([key, field]) => {
    const path = place.path ? `${place.path}.${key}` : key;
    if (place.filling.without?.includes(path)) return [];
    const value = isBlock(values) ? ownField(values, key) : undefined;
    return [fieldLines(key, field, value, needed.includes(key), { ...place, path })];
  });
}

function fieldLines(key: string, field: JsonSchema, value: unknown, isNeeded: boolean, place: Place): string[] {
  const { filling, said, path, indent } = place;
  const told = (example: boolean, deep: boolean) => explanation(key, field, { indent, said, example, deep });
  if (filling.apart?.includes(path)) {
    const example = inFlow({ [key]: ownField(filling.offered, path) ?? exampleOf(field) }).slice(2, -2);
    return [...told(false, true), `${indent}#   ${example}`];
  }
  if (value === undefined && !isNeeded && !isAsked(filling, path)) {
    const offered = ownField(filling.offered, path) ?? exampleOf(field);
    return [...told(false, true), `${indent}#${key}: ${inFlow(offered)}`];
  }
  if (field.properties) return [...blockLines(key, field, value, place)];
  if (field.items?.properties) {
    const entries = Array.isArray(value) && value.length > 0 ? value : [undefined];
    const inner = { ...place, indent: `${indent}  ` };
    return [
      ...told(false, false),
      `${indent}${key}:`,
      ...entries.flatMap((entry) => entryLines(field.items ?? {}, entry, inner)),
    ];
  }
  if (Array.isArray(value) && value.some(Array.isArray)) {
    return [...told(false, true), `${indent}${key}:`, ...value.map((row) => `${indent}  - ${inFlow(row)}`)];
  }
  return [...told(value === undefined, true), `${indent}${key}: ${inFlow(value ?? GAP)}`];
}

/** A block, on one line where all its fields stand in it and none is a block itself. */
function blockLines(key: string, field: JsonSchema, value: unknown, place: Place): string[] {
  const { said, indent } = place;
  const flow = flowOf(field, value, place);
  const told = explanation(key, field, { indent, said, example: false, deep: flow !== undefined });
  if (flow !== undefined) return [...told, `${indent}${key}: ${flow}`];
  const lines = blockFields(field, value, { ...place, indent: `${indent}  ` }).flat();
  return [...told, `${indent}${key}:`, ...lines];
}

/** An entry of a list of blocks. */
function entryLines(item: JsonSchema, value: unknown, place: Place): string[] {
  const { said, indent } = place;
  const flow = flowOf(item, value, place);
  if (flow !== undefined) {
    // Entries after the first are explained by then.
    const told = explanation('', item, { indent, said, example: false, deep: true });
    return [...told, `${indent}- ${flow}`];
  }
  const lines = blockFields(item, value, { ...place, indent: `${indent}  ` }).flat();
  const first = lines.findIndex((line) => !line.trimStart().startsWith('#'));
  // What explains the entry's first field stands above its dash.
  return lines.map((line, i) => {
    if (i < first) return line.slice(2);
    return i === first ? `${indent}- ${line.trimStart()}` : line;
  });
}

/** A block on one line; undefined where it has to be more: a field of it is not asked for, or is a block itself. */
function flowOf(field: JsonSchema, value: unknown, { filling, path }: Place): string | undefined {
  const needed = neededIn(field);
  const entries: Array<[string, unknown]> = [];
  for (const [key, inner] of Object.entries(field.properties ?? {})) {
    const known = isBlock(value) ? ownField(value, key) : undefined;
    const isShown = known !== undefined || needed.includes(key) || isAsked(filling, `${path}.${key}`);
    if (!isShown || inner.properties || inner.items) return undefined;
    entries.push([key, known ?? GAP]);
  }
  const text = inFlow(Object.fromEntries(entries));
  return text.length <= WIDEST_FLOW ? text : undefined;
}

function isAsked({ asked = [] }: Filling, path: string): boolean {
  return asked.some((it) => it === path || it.startsWith(`${path}.`));
}
