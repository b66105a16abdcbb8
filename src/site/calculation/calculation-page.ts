import type { PanelEntry } from '../../ledger/ledger.ts';
import { escaped } from '../shared/html.ts';
import { calculationHtml } from './calculation-html.ts';

/** What a panel's working page has of its own. */
export interface CalculationPage {
  slug: string;
  /** Maker and model; text. */
  name: string;
  /** Markup. */
  main: string;
}

/** The working page of a panel. */
export const calculationPage = (panel: PanelEntry, currency: string): CalculationPage => ({
  slug: panel.slug,
  name: panel.name,
  main: calculationHtml(panel, currency),
});

/** The page that is all frame: marks stand where a panel's own would. No panel can have such a slug. */
export const CALCULATION_FRAME: CalculationPage = { slug: '_slug_', name: '_name_', main: '_main_' };

const MARKS = Object.entries(CALCULATION_FRAME) as Array<[keyof CalculationPage, string]>;

/**
 * How pages are made of the rendered frame: cut once at its marks, and a panel's own put between the pieces.
 *
 * @throws where the frame lacks one of the marks
 */
export function frameFiller(frame: string): (page: CalculationPage) => string[] {
  for (const [key, mark] of MARKS) {
    if (!frame.includes(mark)) throw new Error(`the frame of the working pages has no place for the ${key}`);
  }
  const pieces = frame.split(new RegExp(`(${MARKS.map(([, mark]) => mark).join('|')})`));
  return ({ slug, name, main }) => {
    const own = new Map([
      [CALCULATION_FRAME.slug, escaped(slug)],
      [CALCULATION_FRAME.name, escaped(name)],
      [CALCULATION_FRAME.main, main],
    ]);
    return pieces.map((piece) => own.get(piece) ?? piece);
  };
}
