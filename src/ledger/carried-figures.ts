import type { Session } from '../content/schema/session.ts';
import { type Figure, type FigureMap, type FigureOrGap, isFigure } from '../measure/figure.ts';

/** `<panel>/<day>/<metric or path>` */
const OF_DAY = /^(?<panel>[^/]+)\/(?<day>\d{4}-\d\d-\d\d)\/(?<rest>.+)$/;

/**
 * Figures of a session that carries readings over, as this session's own: each has its id, and tells from which days the
 * readings behind it are. What goes into a figure says so, through however many others.
 */
export interface Carrier {
  figures: FigureMap;
  /** The same for a figure that is made of these, and does not stand among them. */
  carry<T extends FigureOrGap>(it: T): T;
}

/**
 * @param id `<panel>/<date>` of the session
 * @param figures as they were made: those that are made of carried readings alone with the ids of their own session
 */
export function carriedFigures(id: string, own: Session, figures: FigureMap): Carrier {
  if (own.carried === undefined) return { figures, carry: (it) => it };
  const all = [...figures.values()].filter(isFigure);
  const byId = new Map(all.map((it) => [it.id, it]));
  const known = new Map<Figure, ReadonlySet<string>>();

  /** The days of all readings behind a figure. */
  const daysOf = (it: Figure): ReadonlySet<string> => {
    const found = known.get(it);
    if (found) return found;
    const days = new Set<string>();
    known.set(it, days);
    for (const input of it.inputs) {
      const inner = byId.get(input);
      const day = OF_DAY.exec(input)?.groups?.day;
      if (inner && inner !== it) for (const one of daysOf(inner)) days.add(one);
      else if (day) days.add(day);
    }
    return days;
  };
  /** A figure's id in this session; what is no figure of it keeps its path. */
  const here = (input: string) => {
    const rest = byId.has(input) ? OF_DAY.exec(input)?.groups?.rest : undefined;
    return rest === undefined ? input : `${id}/${rest}`;
  };
  const carry = <T extends FigureOrGap>(it: T): T => {
    if (!isFigure(it)) return it;
    const days = daysOf(it);
    const from = [...days].filter((day) => day !== own.date).toSorted();
    if (from.length === 0) return it;
    const rest = OF_DAY.exec(it.id)?.groups?.rest;
    return {
      ...it,
      ...(rest !== undefined && { id: `${id}/${rest}` }),
      inputs: it.inputs.map(here),
      carriedOver: { from, isWhole: !days.has(own.date) },
    };
  };
  return { figures: new Map([...figures].map(([metric, it]) => [metric, carry(it)])), carry };
}
