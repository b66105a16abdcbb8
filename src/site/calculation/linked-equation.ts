import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { unitWords } from '../../words/format.ts';
import { nameOf } from '../../words/names.ts';
import { calculationAnchor } from '../shared/shown-figure.ts';

/** What a figure is made of: another figure with its place on the page, or a reading. */
export interface Input {
  id: string;
  name: string;
  anchor?: string;
  figure?: Figure;
}

/** A piece of a formula: text, or a number that leads to its own calculation. */
export type LinkedPart = string | { text: string; anchor: string };

/** The inputs of a figure, figures with their place on the page. */
export function inputsOf(figure: Figure, panel: PanelEntry, session: SessionEntry | undefined): Input[] {
  const figures = (session ?? panel).figures;
  const own = new Map([...figures.values()].filter(isFigure).map((it) => [it.id, it]));
  return figure.inputs.map((id) => {
    const it = own.get(id);
    if (!it) return { id, name: readingName(id, panel.slug) };
    return { id, name: nameOf(it.metric), anchor: calculationAnchor(it.metric, session, panel.current), figure: it };
  });
}

/** A reading by its path in the panel's file: `peak.combined`. */
function readingName(id: string, slug: string): string {
  return id.replace(`${slug}/`, '').replace(/^\d{4}-\d\d-\d\d\//, '');
}

/**
 * Links the numbers of a formula to the figures that they are.
 *
 * @returns the formula in parts, and the inputs whose number does not stand in it
 */
export function linkedEquation(
  equation: string | undefined,
  inputs: readonly Input[],
  currency: string,
): { parts?: LinkedPart[]; rest: Input[] } {
  if (equation === undefined) return { rest: [...inputs] };
  let parts: LinkedPart[] = [equation];
  const rest: Input[] = [];
  for (const it of inputs) {
    const found = it.figure && it.anchor !== undefined ? linked(parts, it.figure, it.anchor, currency) : undefined;
    if (found) parts = found;
    else rest.push(it);
  }
  return { parts, rest };
}

/** The parts with the first number that is the figure's value linked; undefined where none is. */
function linked(
  parts: readonly LinkedPart[],
  figure: Figure,
  anchor: string,
  currency: string,
): LinkedPart[] | undefined {
  const number = Number(figure.value.toPrecision(4)).toString();
  const texts = [`${number} ${unitWords(figure.unit, currency)}`.trim(), number];
  for (const text of texts) {
    for (const [i, part] of parts.entries()) {
      if (typeof part !== 'string') continue;
      const at = indexOfNumber(part, text);
      if (at < 0) continue;
      const pieces = [part.slice(0, at), { text, anchor }, part.slice(at + text.length)];
      return [...parts.slice(0, i), ...pieces.filter((it) => it !== ''), ...parts.slice(i + 1)];
    }
  }
  return undefined;
}

/** Where a number stands that is not a part of a longer one, nor the result behind the last sign of equality. */
function indexOfNumber(text: string, number: string): number {
  const end = text.lastIndexOf('=');
  for (let at = text.indexOf(number); at >= 0; at = text.indexOf(number, at + 1)) {
    const isLonger = /[\d.]/.test(text[at - 1] ?? '') || /^(\d|\.\d)/.test(text.slice(at + number.length));
    if (!isLonger && (end < 0 || at < end)) return at;
  }
  return -1;
}
