import { METRICS } from '../../measure/metrics.ts';
import { showDate } from '../../words/format.ts';
import type { withdrawnSessions } from '../addresses/withdrawn.ts';
import { type Html, html } from '../shared/html.ts';

/** What is told of a session that has been withdrawn: old links to any figure of it end here. */
export function withdrawnHtml({ day, date, reason, instead }: ReturnType<typeof withdrawnSessions>[number]): Html {
  return html`
<section><h2 id="session-${day}">Withdrawn session, ${showDate(day)}</h2>
<p>${METRICS.map(({ id }) => html`<span id="${id}-${day}"></span>`)}Its readings and figures were taken out of the guide on ${showDate(date)}: ${reason}${instead && html` Instead: <a href="${instead}">${instead}</a>.`}</p></section>`;
}
