import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Loaded } from '../ledger/load-ledger.ts';
import { CALCULATION_FRAME, calculationPage, frameFiller } from '../site/calculation/calculation-page.ts';
import type { PublishedFile } from '../site/export/published-files.ts';

/**
 * The working pages of all panels, made of the frame that Astro has rendered, which goes. They are two thirds of the
 * guide's bytes; one by one through Astro they would take longer than all other pages together.
 *
 * @throws where the folder has no frame
 */
export function calculationPages(folder: string, { ledger }: Loaded): PublishedFile[] {
  const frame = join(folder, 'panels', CALCULATION_FRAME.slug);
  const fill = frameFiller(readFileSync(join(frame, 'methodology', 'index.html'), 'utf8'));
  rmSync(frame, { recursive: true });
  return [...ledger.panels.values()].map((panel) => ({
    path: `panels/${panel.slug}/methodology/index.html`,
    type: 'text/html',
    text: () => fill(calculationPage(panel, ledger.guide.currency)),
  }));
}
