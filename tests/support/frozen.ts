/** Values that tests share: whoever changes one is told so, instead of another test that reads it later. */

const refuse = (): never => {
  throw new TypeError('this is shared by tests, and may not be changed');
};

/** Freezes a value with all that it holds, and returns it. Bytes and other typed arrays can't be frozen, and stay. */
export function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value) || ArrayBuffer.isView(value)) return value;
  if (value instanceof Map || value instanceof Set) {
    for (const name of ['set', 'add', 'delete', 'clear']) Object.defineProperty(value, name, { value: refuse });
  }
  // Before what it holds, which may lead back to it.
  Object.freeze(value);
  if (value instanceof Map) for (const it of value.values()) frozen(it);
  else if (value instanceof Set) for (const it of value) frozen(it);
  else if (!isNumbers(value)) for (const it of Object.values(value)) frozen(it);
  return value;
}

/** A long list of readings, which holds nothing else to freeze. */
const isNumbers = (value: object) => Array.isArray(value) && value.every((it) => typeof it === 'number');
