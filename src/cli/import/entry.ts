import { parse } from 'yaml';
import type { FilePlace } from '../../content/read/files/file-kind.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { sessionSchema } from '../../content/schema/session.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { blocksIn, exampleOf, type JsonSchema, jsonSchemaOf, neededIn } from '../../content/templates/json-schema.ts';
import type { Terminal } from '../ask/terminal.ts';
import type { Understood } from './understood.ts';

/** Fields of a file's entry that were said on the command line, as they were typed. */
export type SetFields = ReadonlyMap<string, string>;

/** `--set level="94 dB"`, any number of times. */
export function setField(value: string, before: Map<string, string> = new Map()): Map<string, string> {
  const [, key, text] = /^([^=]+)=(.*)$/s.exec(value) ?? [];
  if (key === undefined || text === undefined) {
    throw new UsageError(`--set ${value}: a field and its value, as in --set level="94 dB".`);
  }
  return before.set(key.trim(), text.trim());
}

/**
 * What a session says of a file: its name alone where that is enough, else a block with what the schema asks for. What is
 * neither said nor told by the content is asked for.
 *
 * @throws UsageError where something is missing and there is nobody to ask
 */
export async function entryFor(
  { recognised }: Understood,
  name: string,
  place: FilePlace,
  set: SetFields,
  { ask, say }: Terminal,
): Promise<unknown> {
  const schema = entrySchema(place);
  const block = blocksIn(schema)[0];
  const known = Object.keys(block?.properties ?? {});
  const said = new Map<string, unknown>();
  for (const [key, value] of Object.entries(recognised.entry ?? {})) if (known.includes(key)) said.set(key, value);
  for (const [key, text] of set) {
    if (!known.includes(key) || key === 'file') {
      const near = nearest(key, known);
      throw new UsageError(`--set ${key}: there is no such field${near ? `; did you mean ${near}?` : '.'} ${NOTHING}`);
    }
    said.set(key, parse(text));
  }
  const missing = neededIn(block ?? {}).filter((it) => it !== 'file' && !said.has(it));
  for (const key of missing) {
    const field = block?.properties?.[key] ?? {};
    const example = exampleOf(field);
    const shown = typeof example === 'string' ? example : JSON.stringify(example);
    if (!ask) {
      throw new UsageError(`${name} needs ${key}: ${field.description ?? ''} Add --set ${key}='${shown}'. ${NOTHING}`);
    }
    if (field.description) say(`\n${field.description}`);
    said.set(key, parse(await ask(`${key}, such as ${shown}: `)));
  }
  return said.size === 0 && takesName(schema) ? name : { file: name, ...Object.fromEntries(said) };
}

/** The schema of what stands at a place of a session, as editors are told it. */
function entrySchema({ path }: FilePlace): JsonSchema {
  let schema: JsonSchema = jsonSchemaOf(sessionSchema);
  for (const key of path) {
    const found: JsonSchema | undefined =
      key === '*' ? schema.items : blocksIn(schema).flatMap((it) => it.properties?.[key] ?? [])[0];
    if (!found) throw new Error(`the schema of a session has nothing at ${path.join('.')}`);
    schema = found;
  }
  return schema;
}

const takesName = (schema: JsonSchema): boolean =>
  schema.type === 'string' || [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])].some(takesName);

const NOTHING = 'Nothing was written.';
