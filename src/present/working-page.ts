import type { Content } from '../ledger/content.ts';
import type { PanelEntry } from '../ledger/ledger.ts';
import { escaped } from './html.ts';
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
export const workingPage = (panel: PanelEntry, content: Content, currency: string): WorkingPage => ({
  slug: panel.slug,
  name: panel.name,
  main: workingHtml(panel, content, currency),
});

/** The page that is all frame: marks stand where a panel's own would. No panel can have such a slug. */
export const WORKING_FRAME: WorkingPage = { slug: '_frame_', name: '[_name_]', main: '[_main_]' };

const MARKS: ReadonlyArray<[keyof WorkingPage, string]> = [
  ['slug', WORKING_FRAME.slug],
  ['name', WORKING_FRAME.name],
  ['main', WORKING_FRAME.main],
];

/**
 * How pages are made of the rendered frame: cut once at its marks, and a panel's own put between the pieces.
 *
 * @throws where the frame lacks one of the marks
 */
export function frameFiller(frame: string): (page: WorkingPage) => string[] {
  for (const [key, mark] of MARKS) {
    if (!frame.includes(mark)) throw new Error(`the frame of the working pages has no place for the ${key}`);
  }
  const pieces = frame.split(/(_frame_|\[_name_\]|\[_main_\])/);
  const keyOf = new Map(MARKS.map(([key, mark]) => [mark, key]));
  return (page) =>
    pieces.map((piece) => {
      const key = keyOf.get(piece);
      return key === undefined ? piece : key === 'main' ? page.main : escaped(page[key]);
    });
}
