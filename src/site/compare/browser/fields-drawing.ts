/** LED fields to one scale beside a standing figure: a small drawing, a unit of it for a centimetre. No DOM. */

import { USUAL_HEIGHT } from '../../../measure/person.ts';
import { fixed } from '../../../words/format.ts';
import { personOutline } from '../../shared/browser/person-outline.ts';
import { type PieceElement, piece } from '../../shared/browser/pieces.ts';
import type { ComparedPanel, Size } from './compared-panel.ts';

/** A panel with what stands under it. */
export interface NamedPanel {
  panel: ComparedPanel;
  name: string;
}

type Drawn = NamedPanel & { panel: ComparedPanel & { field: Size } };

/** Where the middle of each panel hangs, cm above the floor: half of the figure's height. */
const HUNG = USUAL_HEIGHT / 2;
const MARGIN = 3;
const PERSON_WIDTH = 66;
const GAP = 16;
/** Room for the names under the floor, and for a letter of them at the size that phones have. */
const NAMES = 24;
const LETTER = 9;
/** Longer names are cut under the drawing, not in its description. */
const LONGEST_NAME = 12;

/** The drawing of all panels whose LED field was measured, in their order; undefined where there is none. */
export function fieldsDrawing(panels: readonly NamedPanel[]): PieceElement | undefined {
  const drawn = panels.filter((it): it is Drawn => it.panel.field !== null);
  if (drawn.length === 0) return undefined;
  const tallest = Math.max(USUAL_HEIGHT, ...drawn.map((it) => topOf(it.panel)));
  const floor = round(MARGIN + tallest);
  let left = PERSON_WIDTH;
  const fields = drawn.flatMap(({ panel, name }) => {
    const label = name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;
    const column = Math.max(LETTER * label.length, outer(panel).width) + GAP;
    const middle = round(left + column / 2);
    left += column;
    // The LED field is taken to sit in the middle of its housing.
    const box = (className: string, { width, height }: Size) =>
      piece('rect', {
        class: className,
        x: round(middle - width / 2),
        y: round(floor - hungAt(outer(panel)) - height / 2),
        width,
        height,
      });
    return [
      ...(panel.housing ? [box('housing', panel.housing)] : []),
      box('leds', panel.field),
      piece('text', { x: middle, y: floor + NAMES - 8 }, label),
    ];
  });
  const { head, body } = personOutline({ middle: PERSON_WIDTH / 2, top: floor - USUAL_HEIGHT, scale: 1 });
  const [width, height] = [round(left), floor + NAMES];
  return piece(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-label': description(drawn) },
    piece('path', { class: 'person', d: body }),
    piece('ellipse', { class: 'person', ...head }),
    ...fields,
    piece('path', { class: 'floor', d: `M0 ${floor}H${width}` }),
  );
}

const description = (drawn: readonly Drawn[]) =>
  `LED fields to one scale beside a standing figure of ${USUAL_HEIGHT} cm: ${drawn
    .map(
      ({ panel: { name, field, housing } }) =>
        `${name} ${sizeWords(field)}${housing ? ` in a housing of ${sizeWords(housing)}` : ''}`,
    )
    .join('; ')}`;

/** `24.0 × 40.0 cm`, across and up. */
const sizeWords = ({ width, height }: Size) => `${fixed(width, 1)} × ${fixed(height, 1)} cm`;

/** What a panel takes up: its housing, or its field where that is not known to lie within. */
const outer = ({ field, housing }: Drawn['panel']): Size => ({
  width: Math.max(field.width, housing?.width ?? 0),
  height: Math.max(field.height, housing?.height ?? 0),
});

/** Middle of a panel above the floor, cm: one that is taller than the figure stands on the floor. */
const hungAt = ({ height }: Size) => Math.max(HUNG, height / 2);

const topOf = (panel: Drawn['panel']) => hungAt(outer(panel)) + outer(panel).height / 2;

const round = (value: number) => Number(value.toFixed(1));
