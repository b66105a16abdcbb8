import type { FigureMap } from '../measure/figure.ts';
import { type Figure, type FigureOrGap, type Flag, isFigure } from '../measure/figure.ts';
import { addFlag, handedOn } from '../measure/handed-on.ts';
import type { MetricId } from '../measure/metrics.ts';

/**
 * The figures of a session with their flags: each flag on the figures that it concerns, and handed on to every figure
 * that is made of one of them, as its inputs name it. A flag on a figure that is nothing but readings (a mean of the
 * grid, say) is one on those readings, so that it reaches whatever else is made of them.
 */
export function flaggedFigures(figures: FigureMap, flags: readonly Flag[]): Map<MetricId, FigureOrGap> {
  const result = new Map(figures);
  if (flags.length === 0) return result;
  const all = [...figures.values()].filter(isFigure);
  const byId = new Map(all.map((it) => [it.id, it]));
  const own = new Map(
    all.map((it): [Figure, Flag[]] => [it, flags.filter((flag) => flag.concerns.includes(it.metric))]),
  );
  if (flags.some(isHandedOn)) handOn(all, byId, own);
  for (const it of all) {
    const flagged = own.get(it) as Flag[];
    if (flagged.length > 0) result.set(it.metric, { ...it, flags: flagged });
  }
  return result;
}

const isHandedOn = (flag: Flag) => flag.severity !== 'note' && !flag.isNotHandedOn;

/** Adds to each figure's flags those of what it is made of: first what is read off the same readings, then all else. */
function handOn(all: readonly Figure[], byId: ReadonlyMap<string, Figure>, own: ReadonlyMap<Figure, Flag[]>): void {
  const flagsOf = (it: Figure) => own.get(it) as Flag[];
  const handing = (it: Figure) => ({ metric: it.metric, flags: flagsOf(it).filter(isHandedOn) });
  const readings = (it: Figure) => it.inputs.filter((input) => !byId.has(input));
  const isPlain = (it: Figure) => it.basis !== 'modelled' && !it.inputs.some((input) => byId.has(input));
  const onReadings = all.filter((it) => isPlain(it) && flagsOf(it).some(isHandedOn));
  const taken = (onReadings.length === 0 ? [] : all).map((it) => {
    const paths = readings(it);
    const sources = onReadings.filter(
      (source) => source !== it && source.inputs.some((a) => paths.some((b) => areOne(a, b))),
    );
    return { it, more: handedOn(sources.map(handing)) };
  });
  for (const { it, more } of taken) for (const flag of more) addFlag(flagsOf(it), flag);
  // Figures are made of figures, a few deep; a turn that adds nothing is the last.
  const ofFigures = all
    .map((it) => ({ it, inputs: it.inputs.flatMap((input) => byId.get(input) ?? []) }))
    .filter(({ inputs }) => inputs.length > 0);
  let isDone = false;
  while (!isDone) {
    isDone = true;
    for (const { it, inputs } of ofFigures) {
      for (const flag of handedOn(inputs.map(handing))) if (addFlag(flagsOf(it), flag)) isDone = false;
    }
  }
}

/** True where two paths of readings are one, or one lies within the other: `grid` and `grid.rows`. */
function areOne(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  return long.startsWith(short) && (long.length === short.length || '/.['.includes(long.charAt(short.length)));
}
