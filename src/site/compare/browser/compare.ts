/**
 * The comparison: panels are chosen here, and the choice lives in the address. Only the files of the chosen panels are
 * fetched.
 */

import { listed } from '../../../words/format.ts';
import { html } from '../../shared/browser/dom.ts';
import { unpackFigures } from '../../shared/browser/figure-pack.ts';
import { nameToday } from '../../shared/browser/former-names.ts';
import { OtherFormat, readJson } from '../../shared/browser/read-json.ts';
import { inSite } from '../../shared/browser/site-path.ts';
import { showUnits } from '../../shared/browser/units.ts';
import { askedPanels, compareAddress, MOST_PANELS } from './compare-address.ts';
import type { RowWords } from './compare-rows.ts';
import { type Comparison, comparison } from './compare-view.ts';
import type { ComparedContender } from './compare-words.ts';
import { COMPARE_FORMAT, type ComparedPanel, type ListedPanel, type PanelList } from './compared-panel.ts';
import { meant } from './pick-panel.ts';

const find = <T extends HTMLElement>(selector: string) => document.querySelector<T>(selector);
const form = find<HTMLFormElement>('form[data-compare]');
const status = find('[data-compare-status]');

/** Panels that a text may mean are named up to so many. */
const MOST_NAMED = 5;

/** What gets the focus after a change: the button that takes a panel away, the field, the sentence, or nothing. */
type Focus = { slug: string } | 'field' | 'heading' | undefined;

/** The parts of the page. */
interface Parts {
  field: HTMLInputElement;
  names: HTMLElement;
  chosen: HTMLElement;
  status: HTMLElement;
  heading: HTMLElement;
  lead: HTMLElement;
  drawn: HTMLElement;
  tables: HTMLElement;
  copy: HTMLElement;
}

class Page {
  readonly #panels: ReadonlyMap<string, ListedPanel>;
  /** The panel that a name in an address means. */
  readonly #slugOf: (name: string) => string | undefined;
  readonly #files = new Map<string, Promise<ComparedContender>>();
  readonly #title = document.title;
  /** What stands in the page where nothing is chosen. */
  readonly #empty: { heading: string; lead: Node[] };
  /** What the page calls the rows. */
  readonly #words: RowWords;
  readonly #parts: Parts;
  #slugs: string[] = [];
  /** Counts what was asked for, so that a slow answer does not overwrite a later one. */
  #turn = 0;
  #isFirst = true;

  constructor(panels: readonly ListedPanel[], parts: Parts) {
    this.#panels = new Map(panels.map((it) => [it.slug, it]));
    this.#slugOf = nameToday(panels);
    this.#parts = parts;
    this.#empty = { heading: parts.heading.textContent ?? '', lead: [...parts.lead.childNodes] };
    this.#words = JSON.parse(parts.tables.dataset.rows ?? '{}');
  }

  /** Shows what the address asks for. */
  readAddress(): void {
    const { slugs, said } = askedPanels(location.search, this.#slugOf);
    void this.#show(slugs, said);
  }

  /** Adds the panel whose name, or enough of it, stands in the field. */
  addTyped(): void {
    const { field } = this.#parts;
    const found = meant(field.value, this.#open());
    const [panel] = found;
    if (this.#slugs.length >= MOST_PANELS) this.#say(['Five panels are the most; remove one first.']);
    else if (field.value.trim() === '') this.#say(['Type some of a panel’s name first.']);
    else if (!panel) this.#say([`No other panel has “${field.value.trim().slice(0, 40)}” in its name.`]);
    else if (found.length > 1) {
      const named = found.slice(0, MOST_NAMED).map((it) => it.name);
      const more = found.length - named.length;
      this.#say([`Which one: ${named.join(', ')}${more > 0 ? ` or ${more} more` : ''}?`]);
    } else {
      field.value = '';
      this.#go([...this.#slugs, panel.slug], 'field');
    }
  }

  #remove(slug: string): void {
    const at = this.#slugs.indexOf(slug);
    const left = this.#slugs.filter((it) => it !== slug);
    const next = left[Math.min(at, left.length - 1)];
    this.#go(left, next === undefined ? 'field' : { slug: next });
  }

  readonly #makeFirst = (slug: string): void => {
    this.#go([slug, ...this.#slugs.filter((it) => it !== slug)], 'heading');
  };

  #go(slugs: string[], focus: Focus): void {
    history.pushState(null, '', inSite(compareAddress(slugs)));
    void this.#show(slugs, [], focus);
  }

  async #show(slugs: readonly string[], said: readonly string[], focus?: Focus): Promise<void> {
    this.#slugs = [...slugs];
    const turn = ++this.#turn;
    this.#showChoice();
    this.#setFocus(focus);
    const answers = await Promise.allSettled(slugs.map((slug) => this.#file(slug)));
    if (turn !== this.#turn) return;
    const contenders = answers.flatMap((it) => (it.status === 'fulfilled' ? [it.value] : []));
    const unread = slugs.filter((_, i) => answers[i]?.status === 'rejected').map((it) => this.#nameOf(it));
    const outdated = answers
      .map((it) => (it.status === 'rejected' ? it.reason : undefined))
      .find((it) => it instanceof OtherFormat);
    this.#fill(comparison(contenders, this.#words, this.#makeFirst));
    if (focus === 'heading') this.#parts.heading.focus();
    const names = contenders.map((it) => it.panel.name);
    document.title = names.length > 0 ? `${listed(names)} – ${this.#title}` : this.#title;
    this.#say(
      [
        ...said,
        ...(unread.length > 0 ? [`The figures of ${listed(unread)} could not be read.`] : []),
        ...(outdated ? [`${outdated.message.charAt(0).toUpperCase()}${outdated.message.slice(1)}.`] : []),
      ],
      names.length === 0
        ? 'No panel is chosen.'
        : names.length === 1
          ? `One panel is shown: ${names[0]}.`
          : `${names.length} panels side by side: ${listed(names)}. The first is ${names[0]}.`,
    );
  }

  #fill(shown: Comparison | undefined): void {
    const { heading, lead, drawn, tables, copy } = this.#parts;
    heading.replaceChildren(...(shown?.heading ?? [this.#empty.heading]));
    lead.replaceChildren(...(shown?.lead ?? this.#empty.lead));
    drawn.replaceChildren(...(shown?.drawn ?? []));
    if (this.#slugs.length < 2) lead.append(this.#choices());
    tables.replaceChildren(...(shown?.tables ?? []));
    copy.hidden = !shown;
    // What stands under the comparison won’t be moved any more.
    find('[data-waits]')?.removeAttribute('data-waits');
    showUnits(document);
    if (shown && this.#isFirst) this.#followHash();
    this.#isFirst = false;
  }

  /** The part that the address names was not there yet when the page was opened. */
  #followHash(): void {
    const part = location.hash.length > 1 && this.#parts.tables.querySelector(`#${CSS.escape(location.hash.slice(1))}`);
    if (!part) return;
    const fold = part.closest('details');
    if (fold) fold.open = true;
    part.scrollIntoView();
  }

  /** Says what went wrong to everybody, and what is shown now to those who don't see it. */
  #say(problems: readonly string[], shown = ''): void {
    this.#parts.status.replaceChildren(problems.join(' '), html('span', { class: 'unseen' }, ` ${shown}`));
  }

  /** Panels that can still be chosen. */
  #open(): ListedPanel[] {
    return [...this.#panels.values()].filter((it) => it.status !== 'withdrawn' && !this.#slugs.includes(it.slug));
  }

  #nameOf(slug: string): string {
    return this.#panels.get(slug)?.name ?? slug;
  }

  /** A panel's file; one that could not be read is asked for again the next time. */
  #file(slug: string): Promise<ComparedContender> {
    const known = this.#files.get(slug);
    if (known) return known;
    const file = readJson<ComparedPanel>(`/data/compare/${slug}.json`, 'the figures', COMPARE_FORMAT).then((panel) => ({
      panel,
      figures: unpackFigures(panel),
    }));
    this.#files.set(slug, file);
    file.catch(() => this.#files.delete(slug));
    return file;
  }

  /** The chosen panels, each with a way to take it away, and the names of the others for the field. */
  #showChoice(): void {
    const { chosen, names, field } = this.#parts;
    chosen.replaceChildren(
      ...this.#slugs.map((slug) => {
        const panel: Pick<ListedPanel, 'name' | 'maker' | 'status' | 'photo'> = this.#panels.get(slug) ?? {
          name: slug,
          maker: '',
          status: 'published',
        };
        const { name, maker, status, photo } = panel;
        const hasMaker = name.startsWith(`${maker} `);
        const remove = html('button', { type: 'button', 'aria-label': `Remove ${name}` }, '×');
        remove.addEventListener('click', () => this.#remove(slug));
        return html(
          'li',
          { 'data-slug': slug },
          photo && html('img', { ...photo, alt: '', loading: 'lazy' }),
          html(
            'span',
            {},
            hasMaker && html('span', { class: 'maker' }, `${maker} `),
            hasMaker ? name.slice(maker.length + 1) : name,
            status !== 'published' && html('small', {}, ` ${status}`),
          ),
          remove,
        );
      }),
    );
    names.replaceChildren(...this.#open().map((it) => html('option', { value: it.name })));
    field.placeholder = this.#slugs.length > 0 ? 'another' : 'a panel’s name';
  }

  /** All panels that can be chosen, class by class: as long as there is nothing to compare yet. */
  #choices(): HTMLElement {
    const classes = Map.groupBy(this.#open(), (it) => it.class ?? 'Size not known');
    return html(
      'ul',
      { class: 'choices' },
      ...[...classes].map(([name, panels]) =>
        html(
          'li',
          {},
          html('span', {}, name),
          ...panels.map((it) => {
            const button = html('button', { type: 'button' }, it.name);
            button.addEventListener('click', () => this.#go([...this.#slugs, it.slug], 'field'));
            return button;
          }),
        ),
      ),
    );
  }

  #setFocus(focus: Focus): void {
    if (focus === undefined || focus === 'heading') return;
    const { chosen, field } = this.#parts;
    if (focus === 'field') field.focus();
    else chosen.querySelector<HTMLElement>(`[data-slug="${CSS.escape(focus.slug)}"] button`)?.focus();
  }
}

/** Copies the address of the page, and says whether it could. */
async function copyAddress(said: HTMLElement): Promise<void> {
  try {
    await navigator.clipboard.writeText(location.href);
    said.textContent = 'Copied.';
  } catch {
    said.textContent = 'This browser does not let it be copied; it stands in the address bar.';
  }
}

const parts = {
  field: form?.querySelector('input'),
  names: form?.querySelector('datalist'),
  chosen: find('[data-chosen]'),
  status,
  heading: find('[data-heading]'),
  lead: find('[data-lead]'),
  drawn: find('[data-drawn]'),
  tables: find('[data-compared]'),
  copy: find('[data-copy]'),
};
const isWhole = (them: Partial<Record<keyof Parts, HTMLElement | null>>): them is Parts =>
  Object.values(them).every(Boolean);

if (form && status && isWhole(parts)) {
  form.addEventListener('submit', (event) => event.preventDefault());
  try {
    const { panels } = await readJson<PanelList>('/data/compare.json', 'the panels', COMPARE_FORMAT);
    const page = new Page(panels, parts);
    form.addEventListener('submit', () => page.addTyped());
    // A name that was taken from the list, and not typed: typing one may pass through the name of another.
    parts.field.addEventListener('input', (event) => {
      const isTyped = event instanceof InputEvent && event.inputType !== 'insertReplacementText';
      if (!isTyped && panels.some((it) => it.name === parts.field.value)) page.addTyped();
    });
    const said = parts.copy.querySelector<HTMLElement>('[role=status]');
    if (said) parts.copy.querySelector('button')?.addEventListener('click', () => copyAddress(said));
    addEventListener('popstate', () => page.readAddress());
    page.readAddress();
    // With the panels that the address names in it, so that its field does not move.
    form.hidden = false;
  } catch (error) {
    find('[data-waits]')?.removeAttribute('data-waits');
    status.textContent =
      error instanceof OtherFormat
        ? `Nothing can be compared now: ${error.message}.`
        : 'The list of panels could not be read. Load the page again, or open the panels’ own pages.';
  }
}
