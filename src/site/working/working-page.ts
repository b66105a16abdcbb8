import type { PanelEntry } from '../../ledger/ledger.ts';
import { escaped } from '../shared/html.ts';
import { workingHtml } from './working-html.ts';

/** What a panel's working page has of its own. */
export interface WorkingPage {
  slug: string;
  /** Maker and model; text. */
  name: string;
  /** Markup. */
  main: string;
}

/** The working page of a panel. */
export const workingPage = (panel: PanelEntry, currency: string): WorkingPage => ({
  slug: panel.slug,
  name: panel.name,
  main: workingHtml(panel, currency),
});

/** The page that is all frame: marks stand where a panel's own would. No panel can have such a slug. */
export const WORKING_FRAME: WorkingPage = { slug: '_slug_', name: '_name_', main: '_main_' };

const MARKS = Object.entries(WORKING_FRAME) as Array<[keyof WorkingPage, string]>;

/**
 * How pages are made of the rendered frame: cut once at its marks, and a panel's own put between the pieces.
 *
 * @throws where the frame lacks one of the marks
 */
export function frameFiller(frame: string): (page: WorkingPage) => string[] {
  for (const [key, mark] of MARKS) {
    if (!frame.includes(mark)) throw new Error(`the frame of the working pages has no place for the ${key}`);
  }
  const pieces = frame.split(new RegExp(`(${MARKS.map(([, mark]) => mark).join('|')})`));
  return ({ slug, name, main }) => {
    const own = new Map([
      [WORKING_FRAME.slug, escaped(slug)],
      [WORKING_FRAME.name, escaped(name)],
      [WORKING_FRAME.main, main],
    ]);
    return pieces.map((piece) => own.get(piece) ?? piece);
  };
}
