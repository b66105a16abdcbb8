import { isScalar, Scalar, stringify } from 'yaml';

/** A value on one line, as the files have it: `{ width: 7 in, height: 11 in }`, `[31.2, 40.3]`. */
export function inFlow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inFlow).join(', ')}]`;
  if (typeof value === 'object' && value !== null && !isScalar(value)) {
    return `{ ${Object.entries(value)
      .map(([key, it]) => `${key}: ${inFlow(it)}`)
      .join(', ')} }`;
  }
  // In a list, so that what would end an entry gets quotes.
  return stringify([typeof value === 'string' && value.includes('\n') ? onOneLine(value) : value], {
    collectionStyle: 'flow',
    flowCollectionPadding: false,
    lineWidth: 0,
    doubleQuotedMinMultiLineLength: Number.MAX_SAFE_INTEGER,
  })
    .trim()
    .slice(1, -1);
}

/** A text of several lines, whose ends are spelt out. */
function onOneLine(text: string): Scalar<string> {
  const scalar = new Scalar(text);
  scalar.type = Scalar.QUOTE_DOUBLE;
  return scalar;
}

/** Numbers as displays show them. */
const PLAIN = /^-?(?:0|[1-9]\d*)(?:\.(\d+))?$/;

/** A value as it was typed, for a file: a bare number is one there too, and keeps its last zeros. */
export function asTyped(text: string): Scalar<number> | string {
  const plain = PLAIN.exec(text.trim());
  if (!plain) return text.trim();
  const scalar = new Scalar(Number(text));
  scalar.minFractionDigits = plain[1]?.length ?? 0;
  // More digits than a number has room for stay as they are.
  return inFlow(scalar) === text.trim() ? scalar : text.trim();
}
