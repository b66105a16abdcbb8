import type { CarriedOver, Figure } from './figure.ts';

/** A figure of one session: `<panel>/<day>/<metric>`. Prices and sizes are the panel's, and have no day of this kind. */
const isOfSession = ({ id }: Pick<Figure, 'id'>) => id.split('/').length > 2;

/** What a figure carries over of those that it is made of; undefined where none of them does. */
export function carriedTogether(inputs: ReadonlyArray<Pick<Figure, 'id' | 'carriedOver'>>): CarriedOver | undefined {
  const carried = inputs.flatMap((it) => it.carriedOver ?? []);
  if (carried.length === 0) return undefined;
  return {
    from: [...new Set(carried.flatMap((it) => it.from))].toSorted(),
    isWhole: inputs.filter(isOfSession).every((it) => it.carriedOver?.isWhole),
  };
}
