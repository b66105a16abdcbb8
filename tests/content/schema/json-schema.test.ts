import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { COLLECTIONS, type CollectionName } from '../../../src/content/schema/collections.ts';

/** As much of JSON Schema (draft 2020-12) as the walk looks at. */
interface Json {
  type?: string | string[];
  description?: string;
  properties?: Record<string, Json>;
  additionalProperties?: boolean | Json;
  required?: string[];
  items?: Json;
  prefixItems?: Json[];
  anyOf?: Json[];
  oneOf?: Json[];
  allOf?: Json[];
  $ref?: string;
}

const NAMES = Object.keys(COLLECTIONS) as CollectionName[];
/** As editors see it, and as the site's builder writes it. */
const schemaOf = (name: CollectionName) =>
  z.toJSONSchema(COLLECTIONS[name].schema, { io: 'input', unrepresentable: 'any' }) as Json;

/** Every schema within a schema with its place: `sessions[].grid.rows[][]`. */
function* walk(schema: Json, place: string): Generator<{ place: string; schema: Json; isProperty: boolean }> {
  for (const [key, inner] of Object.entries(schema.properties ?? {})) {
    const at = place ? `${place}.${key}` : key;
    yield { place: at, schema: inner, isProperty: true };
    yield* walk(inner, at);
  }
  for (const inner of [schema.items, ...(schema.prefixItems ?? [])]) {
    if (!inner) continue;
    yield { place: `${place}[]`, schema: inner, isProperty: false };
    yield* walk(inner, `${place}[]`);
  }
  for (const inner of [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.allOf ?? [])]) {
    yield { place, schema: inner, isProperty: false };
    yield* walk(inner, place);
  }
}

describe.each(NAMES)('the JSON Schema of %s', (name) => {
  const top = schemaOf(name);
  const all = [{ place: '', schema: top, isProperty: false }, ...walk(top, '')];

  test('reaches to the last field: nothing is hidden behind a reference', () => {
    expect(all.filter(({ schema }) => schema.$ref !== undefined).map((it) => it.place)).toEqual([]);
    expect(all.filter((it) => it.isProperty).length).toBeGreaterThanOrEqual(Object.keys(top.properties ?? {}).length);
    expect(Object.keys(top.properties ?? {}).length).toBeGreaterThan(name === 'corrections' ? 0 : 2);
  });

  test('takes no unknown field in any block', () => {
    const open = all.filter(({ schema }) => schema.properties && schema.additionalProperties !== false);
    expect(open.map((it) => it.place)).toEqual([]);
  });

  test('describes every field', () => {
    const silent = all.filter(({ schema, isProperty }) => isProperty && !(schema.description ?? '').trim());
    expect(silent.map((it) => it.place)).toEqual([]);
  });

  test('describes fields in sentences that end with a full stop, or in a list of values', () => {
    const odd = all.filter(
      ({ schema, isProperty }) => isProperty && !/[.]$|[a-z]+: [^:]+/.test(schema.description ?? ''),
    );
    expect(odd.map((it) => `${it.place}: ${it.schema.description}`)).toEqual([]);
  });

  test('requires only fields that it has', () => {
    // Alternatives that only name fields (anyOf: [{ required: … }]) have none of their own.
    for (const { schema } of all.filter((it) => it.schema.properties))
      for (const key of schema.required ?? []) expect(Object.keys(schema.properties ?? {})).toContain(key);
  });
});

test('a quantity is a number or a text in an editor’s eyes', () => {
  const weight = schemaOf('panels').properties?.weight;
  expect(weight?.type).toEqual(['number', 'string']);
});

test('fields with a default may be left out', () => {
  expect(schemaOf('guide').required).not.toContain('rates');
  expect(schemaOf('panels').required).toEqual(['maker', 'model', 'status']);
});
