import type { HtmlElement } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { METRICS } from '../../src/measure/metrics.ts';
import { disagreements, pageUnit, takeApart } from './printed.ts';
import {
  attribute,
  currentFigures,
  type DataFigure,
  PAGES,
  PANEL_FILES,
  pageAt,
  panelFiles,
  panelsJson,
  place,
  type SitePage,
  textOf,
} from './site.ts';

const data = panelsJson();
const bySlug = new Map(data.panels.map((it) => [it.slug, it]));

/** Panels that have pages. */
const shown = PANEL_FILES.filter((it) => it.data.status !== 'draft');
const published = panelFiles('published').map((it) => it.slug);
const withdrawn = panelFiles('withdrawn');

const panelPage = (slug: string) => pageAt(`/panels/${slug}/`);
const calculationPage = (slug: string) => pageAt(`/panels/${slug}/methodology/`);
const isKnown = (it: DataFigure | undefined) => it !== undefined && it.value !== null;

test('remarks do not run into the number before them where there is no style sheet', () => {
  // Text browsers and the search index would else read "€62.00" and "2 Nov" as "€62.002 Nov".
  const faults = PAGES.flatMap(({ address, html }) =>
    [...html.matchAll(/>([^<>]*[^\s<>])(?:<\/\w+>)*<small>(?!\s)([^<]*)/g)].map((it) => `${address}: ${it[1]}${it[2]}`),
  );
  expect(faults).toEqual([]);
});

describe('all panels by maker', () => {
  const rows = pageAt('/panels/').document.querySelectorAll('.makers li');
  const rowOf = (slug: string) =>
    rows.find((it) => attribute(it.querySelector('.name a'), 'href') === `/panels/${slug}/`) ?? null;

  test('have the marks of doubt that their own pages have', () => {
    expect(rows.length).toBe(shown.length);
    let marked = 0;
    for (const { slug } of shown) {
      const current = bySlug.get(slug)?.sessions[0]?.figures ?? {};
      const it = current['price-per-watt'] as { flags?: Array<{ severity: string }> } | undefined;
      const isInDoubt = it?.flags?.some(({ severity }) => severity !== 'note') ?? false;
      const cell = rowOf(slug)?.querySelector('.watt') ?? null;
      expect(cell?.querySelector('a.dagger') !== null, slug).toBe(isInDoubt);
      if (isInDoubt) marked++;
    }
    expect(marked).toBeGreaterThan(0);
  });

  test('name a distance that is not the guide’s', () => {
    for (const { slug } of shown) {
      const own = bySlug.get(slug)?.sessions[0]?.distance_cm;
      const head = textOf(rowOf(slug)?.querySelector('.name') ?? null);
      if (own === undefined) continue;
      if (own === 15.24) expect(head).not.toContain('measured at');
      else expect(head).toContain(`measured at ${own} cm`);
    }
  });
});

describe('the ranking tables', () => {
  const guide = pageAt('/');
  const tables = guide.document.querySelectorAll('table.ranking');

  /** Metric of each column with figures, by its label. */
  const METRIC_OF: Record<string, string> = {
    Price: 'real-price',
    'Optical power': 'optical-power',
    'Price per watt': 'price-per-watt',
    'Price per emitted watt': 'price-per-emitted-watt',
    Efficiency: 'efficiency-combined',
    Mean: 'mean-irradiance',
    Peak: 'peak-irradiance-combined',
    Uniformity: 'uniformity-lowest',
    Flicker: 'flicker-combined',
  };

  /** What stands beside a figure and is not of it: the frequency of the flicker. */
  const BESIDE = / at [\d,.]+ Hz(?: \(± not known\))?/;

  const cells = tables.flatMap((table) => {
    const heads = table.querySelectorAll('thead th');
    return table.querySelectorAll('tbody tr').flatMap((row) => {
      const slug = attribute(row.querySelector('th a'), 'href').split('/')[2] ?? '';
      return row.childElements.map((cell, i) => ({ slug, cell, head: heads[i] as HtmlElement, text: textOf(cell) }));
    });
  });
  /** `Optical power`, from a head that goes on with unit and link. */
  const label = (head: HtmlElement) =>
    textOf(head)
      .slice(0, textOf(head).length - textOf(head.querySelector('small')).length)
      .trim();

  test('hold every published panel once, apart from those said to be unranked', () => {
    const ranked = cells.filter((it) => it.cell.is('th')).map((it) => it.slug);
    const unranked = data.panels.filter((it) => it.rank === null).map((it) => it.slug);
    expect([...ranked, ...unranked].toSorted()).toEqual(published);
    for (const slug of unranked) {
      expect(textOf(guide.document.querySelector('main'))).toContain(bySlug.get(slug)?.rank_absent);
    }
  });

  test('have a head, with unit and method, over every cell', () => {
    for (const table of tables) {
      const heads = table.querySelectorAll('thead th');
      for (const row of table.querySelectorAll('tbody tr')) expect(row.childElements).toHaveLength(heads.length);
      for (const head of heads.slice(1)) {
        expect(textOf(head.querySelector('small')), textOf(head)).toMatch(/^\S.* · how/);
        expect(attribute(head.querySelector('a'), 'href')).toMatch(/^\/methods\/[\w-]+\/$/);
      }
    }
  });

  test('have no empty cell, and no gap without a reason', () => {
    for (const { cell, slug, text } of cells) {
      expect(text, `${slug}, ${place(guide, cell)}`).not.toBe('');
      if (cell.querySelector('.gap')) expect(textOf(cell.querySelector('small')), `${slug}: ${text}`).not.toBe('');
      else expect(text, slug).not.toMatch(/^–|NaN|undefined|null|Infinity/);
    }
  });

  test('show the figures of the data files, with their uncertainty or that it is not known', () => {
    const faults = cells.flatMap(({ slug, cell, head, text }) => {
      if (['Panel', 'Rank', 'Tested'].includes(label(head))) return [];
      const metric = METRIC_OF[label(head)];
      if (!metric) return [`no metric is known for the column ${label(head)}`];
      const panel = bySlug.get(slug);
      const figure = panel && currentFigures(panel)[metric];
      if (!figure) return [`${slug} has no ${metric} in the data`];
      if (figure.value === null) {
        const isSaid = text.startsWith('–') && text.includes(figure.reason);
        return isSaid && !cell.hasAttribute('data-v') ? [] : [`${slug} ${metric}: "${text}" for: ${figure.reason}`];
      }
      const unit = pageUnit(figure.unit, data.currency);
      const inHead = textOf(head.querySelector('small'));
      return [
        ...disagreements(text.replace(/[†‡]/, '').replace(BESIDE, ''), figure),
        ...(inHead.includes(figure.unit) ? [] : [`${label(head)}: the unit of the data is ${figure.unit}`]),
        ...(takeApart(text)?.sign === unit.sign ? [] : [`${slug} ${metric}: "${text}" is not in ${figure.unit}`]),
        ...(attribute(cell, 'data-v') === String(figure.value) ? [] : [`${slug} ${metric} sorts by another value`]),
      ].map((it) => `${slug} ${metric}: ${it}`);
    });
    expect(faults).toEqual([]);
  });

  test('give no second number without its uncertainty, or that it is not known', () => {
    // Dates, prices as they were paid, and the rank are exact.
    const asides = cells
      .filter(({ head }) => !['Panel', 'Rank', 'Price', 'Tested'].includes(label(head)))
      .map(({ cell, slug }) => ({ slug, text: textOf(cell.querySelector('small')) }))
      .filter(({ text }) => /\d/.test(text) && !/±|\(.* to .*\)/.test(text));
    expect(asides).toEqual([]);
  });

  test('stand in the order of their ranks, which are those of the data files', () => {
    for (const table of tables) {
      const rows = table.querySelectorAll('tbody tr');
      const slugs = rows.map((row) => attribute(row.querySelector('th a'), 'href').split('/')[2] ?? '');
      const places = slugs.map((slug) => bySlug.get(slug)?.rank?.place);
      expect(places, attribute(table, 'id')).toEqual(rows.map((_, i) => i + 1));
      rows.forEach((row, i) => {
        const rank = bySlug.get(slugs[i] as string)?.rank;
        if (rank?.of === 1) {
          expect(textOf(row.childElements[1] as HtmlElement).trim(), slugs[i]).toBe('alone');
          return;
        }
        const range = rank?.range;
        const numbers = [...textOf(row.childElements[1] as HtmlElement).matchAll(/(\d+)(?:st|nd|rd|th)/g)].map((it) =>
          Number(it[1]),
        );
        if (range) expect(numbers, slugs[i]).toEqual([...new Set(range)]);
      });
    }
  });

  test('mark flagged figures with a dagger that leads to the panel’s flags', () => {
    const daggers = cells.flatMap(({ slug, cell }) => cell.querySelectorAll('a.dagger').map((it) => ({ slug, it })));
    expect(daggers.length).toBeGreaterThan(0);
    for (const { slug, it } of daggers) expect(attribute(it, 'href')).toBe(`/panels/${slug}/#flags`);
  });
});

/** Cells and definitions of a panel's page that hold a figure or say why there is none, and figures beneath others. */
function figurePlaces(page: SitePage): HtmlElement[] {
  const { document } = page;
  const head = document.querySelectorAll('dl.head-figures dd').filter((it) => !it.classList.contains('under'));
  const cells = document.querySelectorAll('main td.n');
  return [
    ...head,
    // What stands under one of the head's figures is another one with words about it.
    ...document.querySelectorAll('dl.head-figures .with'),
    ...document.querySelectorAll('dl.figures dd'),
    ...cells,
    ...cells.flatMap(beneath),
  ];
}

/** Figures that stand beneath that of their cell, smaller. */
const beneath = (cell: HtmlElement) => cell.querySelectorAll('small').filter((it) => calculationLink(it));

/** What a place says of its own figure, and what the head of its line says for all of the line. */
function figureText(place: HtmlElement): string {
  let text = textOf(place).replace(/[†‡]/g, '');
  for (const it of beneath(place)) text = text.replace(textOf(it).replace(/[†‡]/g, ''), '').trim();
  const row = place.closest('tr');
  const notKnown = /± not known.*$/.exec(textOf(row?.querySelector('th') ?? null))?.[0];
  // That there is a range alone stands in the place of the reading, and what is no time has no uncertainty.
  const isRange =
    textOf(row?.querySelector('td') ?? null).startsWith('not read there') || /s not limited by/.test(text);
  return [text.replace(/^at (?=\d)/, ''), notKnown ?? (isRange ? '± not known' : '')].join(' ').trim();
}

/** The unit of a place's figure: behind it, or in the head of its column or line. Multiples are called times. */
function unitAt(place: HtmlElement, written: string): string {
  if (written !== '') return written === 'times' ? '' : written;
  if (textOf(place.parent?.querySelector('dt') ?? null) === 'A watt of light') return '/W';
  if (headOf(place) === 'A watt of light') return '/W';
  const heads = [headOf(place.closest('td') ?? place), textOf(place.closest('tr')?.querySelector('th') ?? null)];
  if (/^(Seconds|Minutes) /.test(heads[0] ?? '')) return 's';
  return heads.flatMap((head) => /, (\S+)(?= of mean| ±|$)/.exec(head)?.[1] ?? []).find((it) => UNITS.has(it)) ?? '';
}

/** The link from a figure to its working. */
function calculationLink(cell: HtmlElement): HtmlElement | undefined {
  return cell.querySelectorAll('a').find((it) => attribute(it, 'href').includes('methodology/#'));
}

/** Columns of a panel's page whose numbers are not measured: what was claimed and paid. */
const EXACT = ['Price', 'List', 'Paid'];

/** Units as pages write them behind a number. */
const UNITS = new Set<string>(METRICS.map((it) => it.unit).filter((it) => it !== '1'));

/** The head over a cell. */
function headOf(cell: HtmlElement): string {
  const row = cell.parent;
  const column = row?.childElements.indexOf(cell) ?? -1;
  const heads = cell.closest('table')?.querySelectorAll('thead th') ?? [];
  return heads[column] ? textOf(heads[column]) : '';
}

describe.each(shown.map((it) => it.slug))('the page of %s', (slug) => {
  const page = panelPage(slug);
  const sessions = bySlug.get(slug)?.sessions ?? [];

  test('has figures', () => {
    expect(figurePlaces(page).length).toBeGreaterThan(30);
  });

  test('gives every number a unit, and its uncertainty or why it has none', () => {
    const faults = figurePlaces(page).flatMap((cell) => {
      const text = figureText(cell);
      const where = `${place(page, cell)}: "${text}"`;
      if (text === '') return [`${where} is empty`];
      if (/NaN|undefined|null|Infinity/.test(text)) return [where];
      const parts = takeApart(text);
      if (!parts) return [];
      // Ratios and multiples have no unit, and their names say so.
      const isPure = /^Peak to mean/.test(textOf(cell.parent)) || parts.unit === 'times';
      const isMoney = parts.sign !== '';
      const isReasonGiven = parts.notKnown || (parts.notKnown !== undefined && parts.bound);
      const isExact = EXACT.includes(headOf(cell)) || (isMoney && parts.unit === '');
      return [
        ...(isPure || isMoney || UNITS.has(unitAt(cell, parts.unit)) ? [] : [`${where} has no unit`]),
        ...(isExact || parts.plusMinus || parts.interval || isReasonGiven ? [] : [`${where} has no uncertainty`]),
      ];
    });
    expect(faults).toEqual([]);
  });

  test('leads from every figure to its working, and from every name to its method', () => {
    for (const definition of page.document.querySelectorAll('dl.figures > div')) {
      expect(attribute(definition.querySelector('dt a'), 'href')).toMatch(/^\/methods\/[\w-]+\/$/);
    }
    const unlinked = figurePlaces(page)
      .filter((it) => !it.is('td'))
      .filter((it) => !it.querySelector('.gap') && !calculationLink(it));
    expect(unlinked.map(textOf)).toEqual([]);
    const anchors = new Set(
      calculationPage(slug)
        .document.querySelectorAll('[id]')
        .map((it) => attribute(it, 'id')),
    );
    const links = figurePlaces(page).flatMap((it) => calculationLink(it) ?? []);
    expect(links.length).toBeGreaterThan(5);
    for (const link of links) {
      const { pathname, hash } = new URL(attribute(link, 'href'), `https://guide.example${page.address}`);
      expect(pathname).toBe(`/panels/${slug}/methodology/`);
      expect(anchors).toContain(hash.slice(1));
    }
  });

  test('says why a figure is missing', () => {
    for (const gap of page.document.querySelectorAll('.gap')) expect(textOf(gap), place(page, gap)).not.toBe('');
  });

  if (sessions.length === 0) return;

  test('says the same as the data files', () => {
    const faults = figurePlaces(page).flatMap((cell) => {
      const link = calculationLink(cell);
      if (!link) return [];
      const fragment = attribute(link, 'href').split('#')[1] as string;
      const session = sessions.find((it) => fragment.endsWith(it.date)) ?? sessions[0];
      const figure = session?.figures[fragment.replace(`-${session.date}`, '')];
      if (!figure || figure.value === null) return [`#${fragment} is no figure of the data`];
      const text = figureText(cell);
      const parts = takeApart(text);
      const wanted = pageUnit(figure.unit, data.currency);
      return [
        // Notes may follow the figure and its uncertainty.
        ...disagreements(
          parts?.notKnown
            ? text.slice(0, text.indexOf(parts.notKnown) + (figure.uncertainty_absent?.length ?? 0))
            : text,
          figure,
        ),
        ...(parts && unitAt(cell, parts.unit) === wanted.unit && parts.sign === wanted.sign
          ? []
          : [`"${text}" is not in ${figure.unit}`]),
      ].map((it) => `#${fragment}: ${it}`);
    });
    expect(faults).toEqual([]);
  });

  test('gives the reasons of the data files for its gaps', () => {
    const figures = currentFigures(bySlug.get(slug) as (typeof data.panels)[number]);
    const reasons = Object.values(figures).flatMap((it) => (it.value === null ? [it.reason] : []));
    for (const gap of page.document.querySelectorAll('dl.head-figures .gap')) expect(reasons).toContain(textOf(gap));
    for (const definition of page.document.querySelectorAll('dl.figures > div')) {
      const gap = definition.querySelector('.gap');
      if (!gap) continue;
      const metric = METRICS.find((it) => it.name === textOf(definition.querySelector('dt')));
      const figure = figures[metric?.id ?? ''];
      expect(textOf(gap), metric?.id).toBe(figure?.value === null ? figure.reason : 'a figure');
    }
  });
});

describe.each(shown)('the working of $slug', ({ slug, data: { sessions = [] } }) => {
  const page = calculationPage(slug);
  const ids = new Set(page.document.querySelectorAll('[id]').map((it) => attribute(it, 'id')));
  const dates = sessions
    .map((it) => it.date)
    .toSorted()
    .toReversed();

  test('has a place for every metric, by the address that stays with the newest session', () => {
    expect(METRICS.map((it) => it.id).filter((id) => !ids.has(id))).toEqual([]);
  });

  test.each(dates)('has a place for every metric of the session of %s, for good', (date) => {
    expect(ids).toContain(`session-${date}`);
    expect(METRICS.map((it) => `${it.id}-${date}`).filter((id) => !ids.has(id))).toEqual([]);
  });

  test('names the method and the basis of each figure, its lasting address, and a budget or why there is none', () => {
    const sections = page.document.querySelectorAll('.by details');
    expect(sections.length).toBeGreaterThan(10);
    for (const section of sections) {
      const where = `#${attribute(section, 'id')}`;
      const text = textOf(section);
      expect(attribute(section.parent?.querySelector('p a') ?? null, 'href'), where).toMatch(/^\/methods\/[\w-]+\/$/);
      expect(textOf(section.parent?.querySelector('p') ?? null), where).toMatch(/\S, version \d+$/);
      expect(text, where).toMatch(/(^|\W)(measured|derived|modelled|claimed); address/);
      const dated = attribute(section.querySelector('summary'), 'id');
      expect(attribute(section.querySelectorAll('a').at(-1) ?? null, 'href'), where).toBe(`#${dated}`);
      const hasBudget = text.includes('±: ');
      const isExact = textOf(section.querySelector('summary')).startsWith('Price really paid');
      expect(hasBudget || isExact || /No uncertainty: \S/.test(text), where).toBe(true);
      if (hasBudget) expect(text, where).toMatch(/u \S+, .*95 % \S+ to \S+/);
    }
  });

  test('gives a reason for every gap', () => {
    for (const gap of page.document.querySelectorAll('.gap')) expect(textOf(gap), place(page, gap)).not.toBe('');
  });
});

/** The reason that stands over a gap. */
function reasonOf(gap: HtmlElement | null): HtmlElement | null {
  const all = gap?.closest('dl')?.childElements ?? [];
  return all.slice(0, gap ? all.indexOf(gap) : 0).findLast((it) => it.is('dt')) ?? null;
}

describe.each(published)('the working of %s and the data files', (slug) => {
  const page = calculationPage(slug);
  const panel = bySlug.get(slug) as (typeof data.panels)[number];

  test.each(panel.sessions.map((it) => it.date))('agree on %s', (date) => {
    const session = panel.sessions.find((it) => it.date === date);
    const isCurrent = session === panel.sessions[0];
    for (const [metric, figure] of Object.entries(session?.figures ?? {})) {
      const element = page.document.querySelector(`#${metric}${isCurrent ? '' : `-${date}`}`);
      expect(element, metric).not.toBeNull();
      if (!isKnown(figure)) expect(textOf(reasonOf(element)), metric).toContain((figure as { reason: string }).reason);
      else {
        const { value, unit, method, method_version, basis } = figure as Extract<DataFigure, { value: number }>;
        // Values by distance are cells of one table, which says once how they were come by.
        const isCell = element?.tagName === 'td';
        const account = isCell ? element.closest('details') : element;
        if (isCurrent) {
          const by = (isCell ? account : element?.parent)?.querySelectorAll('a') ?? [];
          const link = by.find((it) => attribute(it, 'href') === `/methods/${method}/`);
          expect(textOf(link?.parent ?? null), metric).toMatch(new RegExp(`, version ${method_version}$`));
          expect(textOf(account), metric).toMatch(new RegExp(`(^|\\W)${basis}\\W`));
        }
        const printed = takeApart(textOf(isCell ? element : (element?.querySelector('b') ?? null)));
        expect(Math.abs((printed?.value ?? Number.NaN) - value), metric).toBeLessThanOrEqual(
          0.5001 * (printed?.step ?? 0),
        );
        expect(printed, metric).toMatchObject(pageUnit(unit, data.currency));
      }
    }
  });

  test('have every raw reading, as written, struck out where it was', () => {
    for (const session of panel.sessions) {
      expect(session.readings.length).toBeGreaterThan(5);
      const part = page.document.querySelector(`#session-${session.date}`)?.closest('section, details') ?? null;
      const text = textOf(part);
      const grid = part?.querySelectorAll('.grid9 td').map(textOf) ?? [];
      const unit = /, (.+)$/.exec(textOf(part?.querySelector('.grid9 caption') ?? null))?.[1] ?? '';
      for (const it of session.readings) {
        const isPoint = it.path.startsWith('grid.rows');
        const written = (isPoint ? it.written.replace(unit, '') : it.written).replace(/\s+/g, ' ').trim();
        const wanted = it.struck === undefined ? written : `${written} struck out: ${it.struck}`;
        const texts = isPoint ? grid : [text];
        expect(
          texts.some((one) => one.includes(wanted.replace(/\s+/g, ' ').trim())),
          it.path,
        ).toBe(true);
      }
      // Points stand where they were read.
      const points = new Set(session.readings.flatMap((it) => /^grid\.rows\[\d+\]\[\d+\]/.exec(it.path)?.[0] ?? []));
      expect(grid).toHaveLength(points.size);
    }
  });
});

describe('the weight of the calculation pages', () => {
  const pages = shown.map(({ slug }) => calculationPage(slug));
  const KB = 1000;

  test('is at most 70 KB and 6,000 words, for the fullest panel with two sessions too', () => {
    expect(pages.some((it) => it.document.querySelector('details.older'))).toBe(true);
    const heavy = pages.flatMap(({ address, html, document }) => {
      // A word has a letter; numbers, units and signs of a formula are read at a glance.
      const words = textOf(document.querySelector('main'))
        .split(/\s+/)
        .filter((it) => /\p{L}/u.test(it)).length;
      expect(words).toBeGreaterThan(500);
      const bytes = Buffer.byteLength(html);
      return bytes > 70 * KB || words > 6000 ? [`${address}: ${bytes} bytes, ${words} words`] : [];
    });
    expect(heavy).toEqual([]);
  });
});

describe('withdrawn panels', () => {
  test('there is one to look at', () => {
    expect(withdrawn.length).toBeGreaterThan(0);
  });

  test.each(withdrawn)(
    '$slug keeps its page, says why, and stands in no table of the guide',
    ({ slug, data: file }) => {
      const reason = file.statusReason?.replace(/\s+/g, ' ').trim() as string;
      const text = textOf(panelPage(slug).document.querySelector('.notice'));
      expect(text).toContain('Withdrawn');
      expect(text).toContain(reason);
      const guide = pageAt('/').document;
      expect(guide.querySelectorAll('table a').map((it) => attribute(it, 'href'))).not.toContain(`/panels/${slug}/`);
      expect(textOf(guide.querySelector('main'))).toContain(reason);
      expect(bySlug.has(slug)).toBe(false);
      // Nor is it offered as a step up from another.
      for (const other of published) {
        const offered = panelPage(other)
          .document.querySelectorAll('.step-ups a')
          .map((it) => attribute(it, 'href'));
        expect(offered, other).not.toContain(`/panels/${slug}/`);
      }
    },
  );
});
