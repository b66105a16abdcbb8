import { type Html, html } from '../shared/html.ts';
import { lengthHtml, marksHtml, shownHtml } from '../shared/shown-html.ts';
import type { DistanceRow } from './light-view.ts';

/** A line of the table by distance. */
export interface DistanceLine extends Omit<DistanceRow, 'read'> {
  /** Read, not modelled. */
  isRead: boolean;
  /** Under the modelled distance that it is nearest to. */
  isSecond: boolean;
}

/** A line of the table by distance: a string, since a page has many, with several figures each. */
export function distanceHtml({ isRead, isSecond, distance, mean, peak, evenness, time }: DistanceLine): Html {
  const names = [isRead && 'as-read', isSecond && 'second'].filter((it) => it !== false);
  return html`<tr${names.length > 0 && html` class="${names.join(' ')}"`}><th scope="row">${isRead && html`<span class="soft">read${isSecond && ' at'}</span> `}${lengthHtml(distance)}</th><td>${shownHtml(mean)}</td><td>${shownHtml(peak)}</td><td>${shownHtml(evenness)}</td><td>${timeHtml(time, mean)}</td></tr>`;
}

/** A time for each 1 J/cm², which the script multiplies; linked where it has a calculation of its own. */
function timeHtml(time: DistanceRow['time'], mean: DistanceRow['mean']): Html {
  if (!time) return html`<span class="gap">not known</span>`;
  const [shown, interval] = time.text.split(/ (?=\()/);
  const seconds = [time.value, time.low, time.high].map(short).join(' ');
  const value = html`<span data-seconds="${seconds}">${shown}</span>`;
  return html`${time.calculation ? html`<a href="${time.calculation}">${value}</a>` : value}${marksHtml({ dagger: mean.dagger, carried: mean.carried })}${interval && html`<small> ${interval}</small>`}`;
}

/** As many digits as any text of it needs, and more. */
const short = (seconds: number) => Number(seconds.toPrecision(6));
