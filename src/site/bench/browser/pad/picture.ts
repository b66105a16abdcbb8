/** The picture beside the reading: where the sensor goes. */
import { gridGeometry } from '../../../../measure/irradiance/grid-geometry.ts';
import { elementOf } from '../../../shared/browser/dom.ts';
import type { PieceElement } from '../../../shared/browser/pieces.ts';
import { find } from '../sheet-form.ts';
import { readLength } from '../sheet-setup.ts';
import { type DrawnPlace, placesDrawing, sweepDrawing } from './field-drawing.ts';
import type { Pad } from './pad-context.ts';
import { edgesOf, type Place, sweepOf } from './places.ts';
import { readAt } from './way.ts';

/** A grid's number of a point, as its name has it. */
const numberOf = (place: Place) => /\d+/.exec(place.name)?.[0] ?? '';

type State = Pick<DrawnPlace, 'state' | 'isNow'>;

export function startPicture(pad: Pad, oddPaths: () => ReadonlySet<string>): void {
  const figure = find('[data-pad-picture]');
  pad.add(() => {
    const picture = pictureOf(pad, oddPaths());
    figure.classList.toggle('is-wide', picture !== undefined && isWide(picture));
    figure.replaceChildren(...(picture ? [elementOf(picture)] : []));
  });
}

/** So much wider than high that it stands above the field and not beside it. */
function isWide({ attributes }: PieceElement): boolean {
  const [, , width = 1, height = 1] = String(attributes.viewBox).split(' ').map(Number);
  return width > 1.5 * height;
}

/** Undefined where there is nothing to draw: an unknown field, a reading that has no place on it. */
function pictureOf(pad: Pad, odd: ReadonlySet<string>): PieceElement | undefined {
  const { places, at } = pad;
  const now = places[at];
  if (!now) return undefined;
  const state = (it: Place): State => ({
    state: odd.has(it.path) ? 'odd' : readAt(pad.run, it).length > 0 ? 'read' : 'todo',
    isNow: it === now,
  });
  const inStep = places.filter((it) => it.step === now.step);
  const read = inStep.filter((it) => readAt(pad.run, it).length > 0).length;
  const label = `${now.name} is next; ${read} of ${inStep.length} read.`;
  const { field, rows, columns, inset, fault } = pad.grid;
  const sides = field && { width: field.width.cm, height: field.height.cm };
  if (now.step === 'sweep') return sweepDrawing(sweepSpots(pad, inStep, now, state), label);
  if (!sides) return undefined;
  if (now.step === 'grid') {
    const geometry = fault ? undefined : gridGeometry(columns, rows, sides.width, sides.height, inset.cm);
    if (!geometry) return undefined;
    const spots = inStep.flatMap((it): DrawnPlace[] => {
      const [row, column] = [...it.path.matchAll(/\d+/g)].map(Number);
      const [x, y] = [geometry.x[column ?? -1], geometry.y[row ?? -1]];
      return x === undefined || y === undefined ? [] : [{ x, y, label: numberOf(it), ...state(it) }];
    });
    return placesDrawing(sides, spots, label);
  }
  if (now.step === 'beyond' || now.step === 'room')
    return placesDrawing(sides, edgeSpots(pad, inStep, sides, state), label, false);
  return undefined;
}

const cmOf = (text: string) => readLength(text, 0, 1000)?.cm ?? 0;
const indexOf = ({ path }: Place) => Number(/\d+/.exec(path)?.[0]);

function sweepSpots(pad: Pad, inStep: readonly Place[], now: Place, state: (it: Place) => State) {
  const distances = new Map(sweepOf(pad.run).map((it) => [it.index, it.distance]));
  // The same distances come once for each way in which they are read; only the present way is drawn.
  const way = now.path.replace(/.*\./, '');
  return inStep
    .filter((it) => it.path.endsWith(way))
    .map((it) => {
      const written = distances.get(indexOf(it)) ?? '';
      return { cm: cmOf(written), label: /[\d.]+/.exec(written)?.[0] ?? '', ...state(it) };
    });
}

function edgeSpots(
  pad: Pad,
  inStep: readonly Place[],
  { width, height }: { width: number; height: number },
  state: (it: Place) => State,
): DrawnPlace[] {
  const edges = new Map(edgesOf(pad.run).map((it) => [it.index, it]));
  return inStep.flatMap((it, i): DrawnPlace[] => {
    const place = edges.get(indexOf(it));
    if (!place) return [];
    const past = cmOf(place.past);
    const at = {
      left: { x: -past, y: height / 2 },
      right: { x: width + past, y: height / 2 },
      top: { x: width / 2, y: -past },
      bottom: { x: width / 2, y: height + past },
    }[place.edge];
    return at ? [{ ...at, label: String(i + 1), ...state(it) }] : [];
  });
}
