import { blocksIn, exampleOf, type JsonSchema, neededIn } from './json-schema.ts';
import { inFlow } from './yaml-text.ts';

/** Widest line of a comment. */
const WIDEST = 110;

/** More values than these are no list to read. */
const MOST_VALUES = 12;

/** What one field means: its description, its values, what it is where it is left out, and an example. */
function meaningOf(
  schema: JsonSchema,
  { example, optional = false }: { example: boolean; optional?: boolean },
): string {
  const { description = '', enum: values = [] } = schema;
  const unsaid = values.filter((it) => !description.includes(String(it)));
  const parts = [
    description,
    ...(unsaid.length > 0 && values.length <= MOST_VALUES ? [`One of: ${values.join(', ')}.`] : []),
    ...(isPlain(schema.default) ? [`Left out: ${String(schema.default)}.`] : optional ? ['May be left out.'] : []),
    ...(example && saysNothingYet(schema) ? [`Such as ${inFlow(exampleOf(schema))}`] : []),
  ];
  return parts.filter(Boolean).join(' ');
}

const isPlain = (value: unknown) => value !== undefined && typeof value !== 'object';

/** A field whose values are all named needs no example, nor does a block whose fields have theirs. */
function saysNothingYet(schema: JsonSchema): boolean {
  const example = exampleOf(schema);
  const isSaid = schema.enum !== undefined || schema.type === 'boolean' || example === schema.default;
  return !isSaid && example !== undefined && blocksIn(schema).length === 0;
}

/**
 * A field's explanation as comment lines, with that of the fields in it below.
 *
 * @param said explanations that stand in the file already; a field that is explained there is not explained again
 */
export function explanation(
  name: string,
  schema: JsonSchema,
  { indent, said, example, deep }: { indent: string; said: Set<string>; example: boolean; deep: boolean },
): string[] {
  const meaning = meaningOf(schema, { example });
  said.add(keyOf(name, schema));
  return [...comment(meaning, indent), ...(deep ? inner(schema, { indent, said, level: 1 }) : [])];
}

const keyOf = (name: string, { description }: JsonSchema) => `${name}\n${description}`;

interface Inner {
  indent: string;
  said: Set<string>;
  level: number;
}

function inner(schema: JsonSchema, { indent, said, level }: Inner): string[] {
  return blocksIn(schema).flatMap((block) =>
    Object.entries(block.properties ?? {}).flatMap(([key, field]) => {
      const fields = inner(field, { indent, said, level: level + 1 });
      if (said.has(keyOf(key, field))) return [];
      said.add(keyOf(key, field));
      const optional = !neededIn(block).includes(key);
      const text = `${key}: ${meaningOf(field, { example: true, optional })}`;
      return [...comment(text, indent, '  '.repeat(level)), ...fields];
    }),
  );
}

/** A text as comment lines; lines after the first are set in where `inset` is. */
export function comment(text: string, indent: string, inset = ''): string[] {
  const width = WIDEST - indent.length - inset.length - 2;
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= width) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines.map((line, i) => `${indent}# ${inset}${i > 0 && inset ? '  ' : ''}${line}`);
}
