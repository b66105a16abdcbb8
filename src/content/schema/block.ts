/** True for a block of fields: neither a list, nor a single value, nor nothing. */
export function isBlock(value: unknown): value is Readonly<Record<PropertyKey, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A block's own field; what every object inherits ("constructor") is none. */
export function ownField<T>(block: Readonly<Record<PropertyKey, T>> | undefined, key: PropertyKey): T | undefined {
  return block && Object.hasOwn(block, key) ? block[key] : undefined;
}

/** What stands at a path of keys and list positions; undefined where the path leads nowhere. */
export function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let here = data;
  for (const key of path) {
    if (Array.isArray(here)) here = typeof key === 'number' ? here[key] : undefined;
    else here = isBlock(here) ? ownField(here, key) : undefined;
  }
  return here;
}
