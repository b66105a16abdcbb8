/** The running mean, what looks wrong with its reason, what to read next, and the figures so far. */
import { isFigure } from '../../../../measure/figure.ts';
import { figureWords } from '../../../../words/figure-words.ts';
import { markOf } from '../../../../words/flags.ts';
import { methodOf } from '../../../../words/format.ts';
import { say } from '../../../../words/say.ts';
import { elementOf, html } from '../../../shared/browser/dom.ts';
import { figurePieces } from '../../../shared/browser/figure-pieces.ts';
import { find } from '../sheet-form.ts';
import type { WorkedRun } from '../worked-run.ts';
import { meanLine, SHOWN, type Told, toldOf } from './advice-words.ts';
import type { Pad } from './pad-context.ts';
import { ACCEPT_REASONS, reasonForm, STRIKE_REASONS } from './reason-form.ts';

/** Odd things beside the field: the newest alone, since each is to be dealt with; the rest stands below. */
const MOST_ODD = 1;

/** Paths of the places at which something looks wrong. */
export function oddPaths(pad: Pad): ReadonlySet<string> {
  const told = pad.worked ? toldOf(pad.worked, idsAt(pad)) : [];
  const byId = new Map(pad.run.entries.map((it) => [it.id, it.path]));
  return new Set(told.filter((it) => it.isOdd).flatMap((it) => it.ids.flatMap((id) => byId.get(id) ?? [])));
}

const idsAt = (pad: Pad) => (path: string) =>
  pad.run.entries.filter((it) => it.path === path && it.struck === undefined).map((it) => it.id);

/** @param left puts the cursor back to the reading that is taken now */
export function startTold(pad: Pad, left: () => void): void {
  const advice = find('[data-pad-advice]');
  const mean = find('[data-pad-mean]');
  let open = false;
  const done = () => {
    open = false;
    drawn = undefined;
    pad.show();
    left();
  };

  const oddRow = (told: Told): HTMLElement => {
    const id = told.ids.at(-1);
    const entry = pad.run.entries.find((it) => it.id === id);
    const index = pad.places.findIndex((it) => it.path === (entry?.path ?? told.path));
    const place = pad.places[index]?.name ?? told.field;
    const row = html('div', { class: 'pad-doubt' }, html('p', {}, place && html('b', {}, `${place}: `), told.text));
    if (!entry || index < 0) return row;
    const name = `${entry.written}, ${place}`;
    const actions = html('p', { class: 'pad-actions' });
    const button = (word: string, work: () => void) => {
      const made = html('button', { type: 'button', 'aria-label': `${word} ${name}` }, word);
      made.addEventListener('click', work);
      actions.append(made);
    };
    const ask = (kind: 'accept' | 'strike', title: string, reasons: readonly string[]) => {
      open = true;
      const form = reasonForm(
        { title: `${title} ${name}`, doing: title, reasons },
        (reason) => {
          void pad.perform({ kind, id: entry.id, reason }).then(done, () => undefined);
          return undefined;
        },
        done,
      );
      actions.replaceWith(form);
      form.querySelector('select')?.focus();
    };
    button('Again', () => {
      pad.go(index);
      left();
    });
    if (!told.isRefused) button('Accept', () => ask('accept', 'Accept', ACCEPT_REASONS));
    button('Strike', () => ask('strike', 'Strike', STRIKE_REASONS));
    row.append(actions);
    return row;
  };

  const restRow = ({ text, ids, path, field }: Told): HTMLElement => {
    const entry = pad.run.entries.find((it) => it.id === ids.at(-1));
    const place = pad.places.find((it) => it.path === (entry?.path ?? path))?.name ?? field;
    return html('li', {}, place && html('b', {}, `${place}: `), text);
  };

  let drawn: WorkedRun | undefined;
  pad.add(() => {
    const { worked } = pad;
    if (!worked || worked === drawn || open) return;
    drawn = worked;
    const text = meanLine(worked, pad.setup.currency);
    if (mean.textContent !== text) mean.textContent = text;
    const told = toldOf(worked, idsAt(pad));
    const odd = told.filter((it) => it.isOdd);
    const beside = odd.slice(0, MOST_ODD);
    const help = odd.length === 0 ? told.slice(0, 1) : [];
    const more = odd.length - beside.length;
    advice.replaceChildren(
      ...beside.map(oddRow),
      ...(more > 0 ? [html('p', { class: 'small' }, `${more} more below.`)] : []),
      ...help.map((it) => html('p', {}, it.text)),
    );
    const rest = told.filter((it) => !beside.includes(it) && !help.includes(it));
    find('[data-pad-more-advice]').replaceChildren(...rest.map(restRow));
    find('[data-pad-figures]').replaceChildren(...figureRows(worked, pad.setup.currency));
  });
}

/** Points that are still to be read would move every figure that rests on the grid, by more than its interval says. */
function figureRows({ session, grid }: WorkedRun, currency: string): HTMLElement[] {
  const isPart = grid.read > 0 && grid.read < grid.of;
  return SHOWN.flatMap(({ metric, name, isAsked }) => {
    if (isPart && metric !== 'peak-irradiance-combined') {
      const waits = `once all ${grid.of} points are read`;
      return isAsked
        ? [html('div', {}, html('dt', {}, name), html('dd', {}, html('span', { class: 'gap' }, waits)))]
        : [];
    }
    const found = session?.figures.get(metric);
    if (!isFigure(found) && !isAsked) return [];
    const words = figureWords(found, { currency, say, dagger: markOf(found) });
    const at = isFigure(found) ? { href: methodOf(found).address, flagsAt: '#pad-figures' } : {};
    return [html('div', {}, html('dt', {}, name), html('dd', {}, ...figurePieces(words, at).map(elementOf)))];
  });
}
