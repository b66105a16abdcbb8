import type { Source } from './source.ts';

/** A function of a source that looks at each one once: the product's texts are the same ones at each reading. */
export function perSource<T>(work: (source: Source) => T): (source: Source) => T {
  const known = new WeakMap<Source, { is: T }>();
  return (source) => {
    const answer = known.get(source) ?? { is: work(source) };
    known.set(source, answer);
    return answer.is;
  };
}
