import { z } from 'zod';

/** The names of all fields of all blocks that a schema allows, by its JSON Schema. */
export function fieldsOf(schema: z.ZodType): string[] {
  const names: string[] = [];
  const visit = (it: unknown): void => {
    if (typeof it !== 'object' || it === null) return;
    const { properties } = it as { properties?: object };
    if (properties) names.push(...Object.keys(properties));
    Object.values(it).forEach(visit);
  };
  visit(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }));
  return names;
}
