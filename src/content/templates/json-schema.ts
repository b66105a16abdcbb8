import { z } from 'zod';

/** As much of JSON Schema (draft 2020-12) as new files are made from. */
export interface JsonSchema {
  type?: string | string[];
  description?: string;
  properties?: Readonly<Record<string, JsonSchema>>;
  required?: readonly string[];
  items?: JsonSchema;
  anyOf?: readonly JsonSchema[];
  oneOf?: readonly JsonSchema[];
  enum?: readonly unknown[];
  default?: unknown;
  examples?: readonly unknown[];
  /** What holds where no block of another form stands. */
  else?: { required?: readonly string[] };
}

const known = new WeakMap<z.ZodType, JsonSchema>();

/** What a file may say, as editors are told; worked out once for each schema. */
export function jsonSchemaOf(schema: z.ZodType): JsonSchema {
  const made = known.get(schema) ?? (z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as JsonSchema);
  known.set(schema, made);
  return made;
}

/** The fields that a block can't do without. */
export function neededIn(schema: JsonSchema): readonly string[] {
  return [...(schema.required ?? []), ...(schema.else?.required ?? [])];
}

/** The blocks among a field's alternatives, each with its fields. */
export function blocksIn(schema: JsonSchema): JsonSchema[] {
  if (schema.properties) return [schema];
  const alternatives = [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.items ? [schema.items] : [])];
  return alternatives.flatMap(blocksIn);
}

/** What may be written there: the schema's own example, or one made of those of its fields. */
export function exampleOf(schema: JsonSchema): unknown {
  if (schema.examples && schema.examples.length > 0) return schema.examples[0];
  if (schema.properties) {
    // Of fields of which only one may stand, the first.
    const others = new Set(schema.oneOf?.slice(1).flatMap((it) => it.required ?? []));
    const fields = Object.entries(schema.properties).filter(([key]) => !others.has(key));
    return Object.fromEntries(fields.map(([key, field]) => [key, exampleOf(field)]));
  }
  if (schema.items) return [exampleOf(schema.items)];
  if (schema.enum) return schema.default ?? schema.enum[0];
  if (schema.type === 'boolean') return schema.default ?? true;
  return schema.default ?? (schema.anyOf ? exampleOf(schema.anyOf[0] ?? {}) : undefined);
}
