import { errorsHtml, methodsHtml } from '../calculation/calculation-html.ts';
import { gapsHtml } from '../calculation/figure-html.ts';
import { html } from '../shared/html.ts';
import type { FilesSession } from './files-view.ts';

/** How the figures of a session that come from files are worked out; empty where there are none. */
export function figuresOfFilesHtml({ calculation }: FilesSession): string {
  const { figures, gaps } = calculation;
  if (figures.length === 0 && gaps.length === 0) return '';
  return html`<h3 id="figures-${calculation.date}">Figures from the files</h3>
<div class="worked">${methodsHtml(figures)}</div>
${gapsHtml(calculation)}
${figures.length > 0 && html`<h3>What moves them</h3>\n<div class="movers">${errorsHtml(calculation)}</div>`}`.text;
}
