import type { Figure } from './figure.ts';

/** That a figure rests on readings which were not taken again, and stand for a session later than their own. */
export interface CarriedOver {
  /** Days of the sessions in which they were taken, `YYYY-MM-DD`, the earliest first. */
  from: readonly string[];
  /** All readings behind it are from there; else it is made of old and new ones. */
  isWhole: boolean;
}

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
