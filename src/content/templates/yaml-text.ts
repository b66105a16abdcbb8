import { stringify } from 'yaml';

/** A value on one line, as the files have it: `{ width: 7 in, height: 11 in }`, `[31.2, 40.3]`. */
export function inFlow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inFlow).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    return `{ ${Object.entries(value)
      .map(([key, it]) => `${key}: ${inFlow(it)}`)
      .join(', ')} }`;
  }
  // In a list, so that what would end an entry gets quotes.
  return stringify([value], { collectionStyle: 'flow', flowCollectionPadding: false, lineWidth: 0 })
    .trim()
    .slice(1, -1);
}
