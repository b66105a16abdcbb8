/** LED fields to one scale beside a standing figure. No DOM. */

import { USUAL_HEIGHT } from '../../../measure/person.ts';
import { fixed } from '../../../words/format.ts';
import { type PersonOutline, personOutline } from '../../shared/browser/person-outline.ts';
import type { ComparedPanel, Size } from './compared-panel.ts';

/** Lengths in CSS pixels from the top left. */
interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** LED fields beside a standing figure, ready to draw. */
export interface FieldsDrawing {
  width: number;
  height: number;
  floor: number;
  rule: { x: number; top: number; ticks: Array<{ y: number; length: number; text?: string }> };
  person: PersonOutline & { label: { x: number; y: number } };
  fields: Array<{ leds: Box; housing?: Box; middle: number; lines: string[] }>;
  description: string;
}

/** CSS pixels a centimetre. */
const SCALE = 2;
/** Where the middle of each panel hangs, cm above the floor: half of the figure's height. */
const HUNG = USUAL_HEIGHT / 2;
const MARGIN = 8;
const RULE_WIDTH = 52;
const PERSON_WIDTH = 150;
const LEAST_COLUMN = 150;
const LINE = 17;
const LEAST_HEIGHT = 180;

/** Panels whose LED field was measured, in their order; undefined where there is none. */
export function fieldsDrawing(panels: readonly ComparedPanel[]): FieldsDrawing | undefined {
  const drawn = panels.filter((it): it is ComparedPanel & { field: Size } => it.field !== null);
  if (drawn.length === 0) return undefined;
  const outer = ({ field, housing }: ComparedPanel & { field: Size }): Size => ({
    width: Math.max(field.width, housing?.width ?? 0),
    height: Math.max(field.height, housing?.height ?? 0),
  });
  const tallest = Math.max(LEAST_HEIGHT, ...drawn.map((it) => hungAt(outer(it)) + outer(it).height / 2 + 5));
  const floor = MARGIN + SCALE * tallest;
  const up = (cm: number) => round(floor - SCALE * cm);
  let left = RULE_WIDTH + PERSON_WIDTH;
  const fields = drawn.map((panel) => {
    const column = Math.max(LEAST_COLUMN, SCALE * outer(panel).width + 3 * MARGIN);
    const middle = left + column / 2;
    left += column;
    // The LED field is taken to sit in the middle of its housing.
    const box = ({ width, height }: Size): Box => ({
      x: round(middle - (SCALE * width) / 2),
      y: up(hungAt(outer(panel)) + height / 2),
      width: round(SCALE * width),
      height: round(SCALE * height),
    });
    return {
      leds: box(panel.field),
      ...(panel.housing && { housing: box(panel.housing) }),
      middle: round(middle),
      lines: [panel.maker, panel.model, sizeWords(panel.field)],
    };
  });
  const personAt = RULE_WIDTH + PERSON_WIDTH / 2;
  const top = up(USUAL_HEIGHT);
  return {
    width: round(left + MARGIN),
    height: round(floor + 3 * LINE + 2 * MARGIN),
    floor,
    rule: { x: RULE_WIDTH - 6, top: up(Math.floor(tallest / 10) * 10), ticks: ruleTicks(tallest, up) },
    person: {
      ...personOutline({ middle: personAt, top, scale: SCALE }),
      label: { x: personAt, y: floor + LINE },
    },
    fields,
    description: `LED fields to one scale beside a standing figure of ${USUAL_HEIGHT} cm: ${drawn
      .map((it) => `${it.name} ${sizeWords(it.field)}${it.housing ? ` in a housing of ${sizeWords(it.housing)}` : ''}`)
      .join('; ')}`,
  };
}

/** `24.0 × 40.0 cm`, across and up. */
export function sizeWords({ width, height }: Size): string {
  return `${fixed(width, 1)} × ${fixed(height, 1)} cm`;
}

/** Middle of a panel above the floor, cm: one that is taller than the figure stands on the floor. */
const hungAt = ({ height }: Size) => Math.max(HUNG, height / 2);

function ruleTicks(tallest: number, up: (cm: number) => number): FieldsDrawing['rule']['ticks'] {
  const count = Math.floor(tallest / 10);
  return Array.from({ length: count + 1 }, (_, i) =>
    i % 5 === 0 ? { y: up(10 * i), length: 10, text: String(10 * i) } : { y: up(10 * i), length: 5 },
  );
}

const round = (value: number) => Number(value.toFixed(1));
