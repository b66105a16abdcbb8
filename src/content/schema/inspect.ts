import type { z } from 'zod';
import { ownField } from './block.ts';
import { MEANINGS } from './described.ts';

/** The parts of zod's definitions that are looked into. */
interface Definition {
  type: string;
  innerType?: z.ZodType;
  in?: z.ZodType;
  out?: z.ZodType;
  shape?: Record<string, z.ZodType>;
  element?: z.ZodType;
  options?: z.ZodType[];
}

function definitionOf(schema: z.ZodType): Definition {
  return schema._zod.def as unknown as Definition;
}

function fieldOf(shape: Definition['shape'], key: PropertyKey | undefined): z.ZodType | undefined {
  return key === undefined ? undefined : ownField(shape, key);
}

/** Takes optional, default and transform wrappers off, down to the shape that a file is written in. */
function written(schema: z.ZodType): z.ZodType {
  const definition = definitionOf(schema);
  if (definition.innerType) return written(definition.innerType);
  if (definition.type === 'pipe' && definition.in && definition.out) {
    return written(definitionOf(definition.in).type === 'transform' ? definition.out : definition.in);
  }
  return schema;
}

/** The alternatives that a schema stands for, unions taken apart. */
function alternatives(schema: z.ZodType): z.ZodType[] {
  const bare = written(schema);
  const { options } = definitionOf(bare);
  return options ? options.flatMap(alternatives) : [bare];
}

/** The schemas at a path of keys and list positions; several where the path leads through a union. */
function schemasAt(schema: z.ZodType, path: readonly PropertyKey[]): z.ZodType[] {
  let here = alternatives(schema);
  for (const key of path) {
    here = here.flatMap((it) => {
      const { shape, element } = definitionOf(it);
      const next = typeof key === 'number' ? element : fieldOf(shape, key);
      return next ? alternatives(next) : [];
    });
  }
  return here;
}

/** The keys that may stand in the block at a path; empty where no block belongs there. */
export function keysAt(schema: z.ZodType, path: readonly PropertyKey[]): string[] {
  return [...new Set(schemasAt(schema, path).flatMap((it) => Object.keys(definitionOf(it).shape ?? {})))];
}

/** What the field at a path means, as its schema describes it. */
export function meaningAt(schema: z.ZodType, path: readonly PropertyKey[]): string | undefined {
  const last = path.at(-1);
  for (const parent of schemasAt(schema, path.slice(0, -1))) {
    let field = typeof last === 'number' ? undefined : fieldOf(definitionOf(parent).shape, last);
    while (field) {
      const meaning = MEANINGS.get(field)?.meaning ?? field.description;
      if (meaning) return meaning;
      const definition = definitionOf(field);
      field = definition.innerType ?? (definition.type === 'pipe' ? definition.out : undefined);
    }
  }
  return undefined;
}

/** True where the field at a path may be left out. */
export function isOptionalAt(schema: z.ZodType, path: readonly PropertyKey[]): boolean {
  return schemasAt(schema, path.slice(0, -1)).some((parent) => {
    const field = fieldOf(definitionOf(parent).shape, path.at(-1));
    return field?.safeParse(undefined).success ?? false;
  });
}

/** The names of blocks, anywhere in a schema, that have all of these fields. */
export function blocksWith(schema: z.ZodType, keys: readonly string[]): string[] {
  const names = new Set<string>();
  const look = (block: z.ZodType, name: string): void => {
    for (const it of alternatives(block)) {
      const { shape, element } = definitionOf(it);
      if (element) look(element, name);
      if (!shape) continue;
      if (name !== '' && keys.every((key) => Object.hasOwn(shape, key))) names.add(name);
      for (const [key, field] of Object.entries(shape)) look(field, key);
    }
  };
  look(schema, '');
  return [...names];
}
