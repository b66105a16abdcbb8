import type { CollectionName } from '../schema/collections.ts';

/** The first line of a YAML file, by which editors find what it may say. */
export function schemaLine(name: CollectionName): string {
  return `# yaml-language-server: $schema=../../.astro/collections/${name}.schema.json\n`;
}
