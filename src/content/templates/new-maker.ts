import { makerSchema } from '../schema/maker.ts';
import { fileText } from './file-text.ts';
import { jsonSchemaOf } from './json-schema.ts';
import { schemaLine } from './schema-line.ts';

/** The text of a new maker's file: what is known of it, and every other field commented out. */
export function newMakerText(values: Readonly<Record<string, unknown>>): string {
  return schemaLine('makers') + fileText(jsonSchemaOf(makerSchema), { values });
}
