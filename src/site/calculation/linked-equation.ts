import { fieldPath } from '../../content/schema/problem.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type Figure, type FigureMap, isFigure } from '../../measure/figure.ts';
import { unitWords } from '../../words/format.ts';
import { nameOf } from '../../words/names.ts';
import { fileAnchor } from '../shared/file-addresses.ts';
import { type CalculationPage, calculationAnchor, calculationPage } from '../shared/shown-figure.ts';

/** What a figure is made of: another figure with its place on the page, or a reading. */
export interface Input {
  id: string;
  name: string;
  anchor?: string;
  /** Where that is, from the page that tells it; left out: on the same page. */
  page?: string;
  figure?: Figure;
}

/** A piece of a formula: text, or a number that leads to its own calculation. */
export type LinkedPart = string | ({ text: string } & Pick<Input, 'page'> & { anchor: string });

/** Figures of a session by their ids: what its figures are made of. */
export type FiguresById = ReadonlyMap<string, Figure>;

/** The figures among what a session, or a panel without one, has. */
export const figuresById = (figures: FigureMap): FiguresById =>
  new Map([...figures.values()].filter(isFigure).map((it) => [it.id, it]));

/**
 * The inputs of a figure, figures with their place on the page.
 *
 * @param own the figures of its session
 */
export function inputsOf(
  figure: Figure,
  panel: PanelEntry,
  session: SessionEntry | undefined,
  own: FiguresById,
): Input[] {
  const from = calculationPage(figure.metric);
  const pageOf = (page: CalculationPage) => (page === from ? {} : { page: `../${page}/` });
  return figure.inputs.map((id) => {
    const it = own.get(id);
    if (it) {
      const anchor = calculationAnchor(it.metric, session, panel.current);
      return { id, name: nameOf(it.metric), anchor, ...pageOf(calculationPage(it.metric)), figure: it };
    }
    const name = readingName(id, panel.slug);
    const file = session?.files.find(({ date, field }) => id === `${panel.slug}/${date}/${fieldPath(field)}`);
    return file ? { id, name: file.name, anchor: fileAnchor(file), ...pageOf('files') } : { id, name };
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
    const found =
      it.figure && it.anchor !== undefined ? linked(parts, it.figure, it.anchor, it.page, currency) : undefined;
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
  page: string | undefined,
  currency: string,
): LinkedPart[] | undefined {
  const number = Number(figure.value.toPrecision(4)).toString();
  const texts = [`${number} ${unitWords(figure.unit, currency)}`.trim(), number];
  for (const text of texts) {
    for (const [i, part] of parts.entries()) {
      if (typeof part !== 'string') continue;
      const at = indexOfNumber(part, text);
      if (at < 0) continue;
      const pieces = [
        part.slice(0, at),
        { text, anchor, ...(page !== undefined && { page }) },
        part.slice(at + text.length),
      ];
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
