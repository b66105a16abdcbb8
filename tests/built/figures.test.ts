import type { HtmlElement } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { METRICS } from '../../src/measure/metrics.ts';
import { disagreements, pageUnit, rounds, takeApart } from './printed.ts';
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
    [...html.matchAll(/>([^<>]*[^\s<>])(?:<\/\w+>)*<small>(?![\s,])([^<]*)/g)].map(
      (it) => `${address}: ${it[1]}${it[2]}`,
    ),
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

describe('the ranking', () => {
  const guide = pageAt('/');
  const table = guide.document.querySelector('table.ranking');
  const bodies = table?.querySelectorAll('tbody') ?? [];
  const heads = table?.querySelectorAll('thead th') ?? [];

  /** Metric of each column with figures, by its name in addresses. */
  const METRIC_OF: Record<string, string> = {
    price: 'real-price',
    'optical-power': 'optical-power',
    'price-per-watt': 'price-per-watt',
    efficiency: 'efficiency-combined',
    mean: 'mean-irradiance',
    peak: 'peak-irradiance-combined',
    uniformity: 'uniformity-lowest',
    flicker: 'flicker-combined',
  };

  /** What stands beside a figure and is not of it: the frequency of the flicker. */
  const BESIDE = /,? [\d,.]+ k?Hz$/;

  /** Rows of panels: those that name a class or who is not ranked are none. */
  const rowsOf = (body: HtmlElement) => body.querySelectorAll('tr[data-f]');
  const slugOf = (row: HtmlElement) => attribute(row.querySelector('th a'), 'href').split('/')[2] ?? '';
  const cells = bodies.flatMap(rowsOf).flatMap((row) =>
    row.childElements.map((cell, i) => ({
      slug: slugOf(row),
      cell,
      head: heads[i] as HtmlElement,
      text: textOf(cell),
    })),
  );
  const metricOf = (head: HtmlElement) => METRIC_OF[attribute(head, 'data-col')];
  /** `Light`, from a head that goes on with its unit. */
  const label = (head: HtmlElement) => {
    const whole = textOf(head);
    return whole.slice(0, whole.length - textOf(head.querySelector('small')).length).trim();
  };

  test('holds every published panel once, apart from those said to be unranked', () => {
    const ranked = cells.filter((it) => it.cell.is('th')).map((it) => it.slug);
    const unranked = data.panels.filter((it) => it.rank === null).map((it) => it.slug);
    expect([...ranked, ...unranked].toSorted()).toEqual(published);
    for (const slug of unranked) {
      const line = bodies.flatMap((it) => it.querySelectorAll('tr.unranked')).map(textOf);
      const own = line.find((it) => it.includes(`${bySlug.get(slug)?.model}, `));
      expect(own, slug).toContain(bySlug.get(slug)?.rank_absent);
    }
  });

  test('has a head that names what it is over every cell, and a column for each metric', () => {
    for (const row of bodies.flatMap(rowsOf)) expect(row.childElements, slugOf(row)).toHaveLength(heads.length);
    for (const head of heads.filter((it) => attribute(it, 'aria-hidden') !== 'true')) {
      expect(textOf(head)).not.toBe('');
      expect(attribute(head, 'scope'), textOf(head)).toBe('col');
    }
    const columns = heads.map((it) => attribute(it, 'data-col')).filter((it) => it !== '' && it !== 'name');
    expect(columns.toSorted()).toEqual(Object.keys(METRIC_OF).toSorted());
    // What a phone shows above the figure is what the head says.
    for (const { cell, head, slug } of cells) {
      const own = attribute(cell, 'data-l');
      if (own === '' || !metricOf(head)) continue;
      expect(own.toLowerCase(), slug).toBe(textOf(head).replace(' ,', '').toLowerCase());
    }
  });

  test('links to the method of every column', () => {
    const main = guide.document.querySelector('main');
    const links = main?.querySelectorAll('a').map((it) => attribute(it, 'href')) ?? [];
    for (const metric of Object.values(METRIC_OF)) {
      const method = METRICS.find((it) => it.id === metric)?.method;
      expect(links, metric).toContain(`/methods/${method}/`);
    }
  });

  test('has no empty cell, and no gap without a reason', () => {
    for (const { cell, slug, text, head } of cells) {
      // The interval is drawn beside its figure.
      if (attribute(cell, 'aria-hidden') === 'true') continue;
      expect(text, `${slug}, ${place(guide, cell)}`).not.toBe('');
      const gap = cell.querySelector('.gap');
      // A long reason is there for screen readers alone, behind a dash.
      if (gap) expect(text.replace(/^–/, '').trim(), `${slug}: ${label(head)}`).not.toBe('');
      else expect(text, slug).not.toMatch(/^–|NaN|undefined|null|Infinity/);
    }
  });

  test('shows the figures of the data files, with their uncertainty', () => {
    let compared = 0;
    const faults = cells.flatMap(({ slug, cell, head, text }) => {
      const metric = metricOf(head);
      if (!metric) return [];
      compared++;
      const panel = bySlug.get(slug);
      const figure = panel && currentFigures(panel)[metric];
      if (!figure) return [`${slug} has no ${metric} in the data`];
      if (figure.value === null) {
        const isSaid = text === figure.reason || text === `– ${figure.reason}`;
        return isSaid && cell.querySelector('.gap') ? [] : [`${slug} ${metric}: "${text}" for: ${figure.reason}`];
      }
      const { sign, unit } = pageUnit(figure.unit, data.currency);
      const inHead = textOf(head);
      // A price has its sign itself; that of a watt has it in the head.
      const isPerWatt = unit === '/W';
      const named = isPerWatt ? `${sign} a watt` : sign !== '' ? '' : unit;
      return [
        ...disagreements(text.replace(/ ?[†‡]/, '').replace(BESIDE, ''), figure),
        ...(inHead.includes(named) ? [] : [`${inHead}: the unit of the data is ${figure.unit}`]),
        ...(takeApart(text)?.sign === (isPerWatt ? '' : sign) ? [] : [`"${text}" is not in ${figure.unit}`]),
      ].map((it) => `${slug} ${metric}: ${it}`);
    });
    expect(faults).toEqual([]);
    expect(compared).toBe(bodies.flatMap(rowsOf).length * Object.keys(METRIC_OF).length);
  });

  /** What stands behind a figure, smaller, besides the day that it is from. */
  const asideOf = (cell: HtmlElement) =>
    cell.querySelectorAll('small').find((it) => attribute(it, 'class') !== 'carried') ?? null;

  test('gives no second number without its uncertainty, but for dates, other currencies and frequencies', () => {
    const asides = cells
      .filter(({ head }) => metricOf(head) !== 'real-price' && metricOf(head) !== undefined)
      .map(({ cell, slug }) => ({ slug, text: textOf(asideOf(cell)).replace(BESIDE, '') }))
      .filter(({ text }) => /\d/.test(text) && !/^k?Hz$|^[\d,.]+ k?Hz$|±|.* to .*/.test(text));
    expect(asides).toEqual([]);
  });

  test('stands in the order of its ranks, which are those of the data files', () => {
    expect(bodies.length).toBeGreaterThan(2);
    for (const body of bodies) {
      const rows = rowsOf(body);
      const slugs = rows.map(slugOf);
      const places = slugs.map((slug) => bySlug.get(slug)?.rank?.place);
      expect(places, attribute(body, 'id')).toEqual(rows.map((_, i) => i + 1));
      rows.forEach((row, i) => {
        const rank = bySlug.get(slugs[i] as string)?.rank;
        const said = textOf(row.childElements[0] as HtmlElement).replace(/ ?[†‡]/, '');
        const isTied = (rank?.tiedWith.length ?? 0) > 0;
        expect(said.includes('a tie'), `${slugs[i]}: ${said}`).toBe(isTied);
        if (rank?.of === 1) {
          expect(said, slugs[i]).toBe('alone');
          return;
        }
        const numbers = [...said.matchAll(/\d+/g)].map((it) => Number(it[0]));
        const range = rank?.range ?? [i + 1];
        expect(numbers, slugs[i]).toEqual([...new Set(range)]);
      });
    }
  });

  test('marks flagged figures with a dagger that leads to the panel’s flags', () => {
    const daggers = cells.flatMap(({ slug, cell }) => cell.querySelectorAll('a.dagger').map((it) => ({ slug, it })));
    expect(daggers.length).toBeGreaterThan(0);
    for (const { slug, it } of daggers) expect(attribute(it, 'href')).toBe(`/panels/${slug}/#flags`);
  });
});

/** Cells and definitions of a panel's page that hold a figure or say why there is none, and figures beneath others. */
function figurePlaces(page: SitePage): HtmlElement[] {
  const { document } = page;
  const head = document.querySelectorAll('dl.head-figures dd').filter((it) => !it.classList.contains('under'));
  // What was read and its share: limit and bar lie between them.
  const limits = document.querySelectorAll('.limits tbody tr').flatMap((row) => {
    const [read, , , share] = row.querySelectorAll('td');
    return [read?.classList.contains('soft') ? undefined : read, share].filter((it) => it !== undefined);
  });
  const cells = [
    ...['td.n', '.emitted td', '.distances td', '.bench td', '.prices td'].flatMap((it) =>
      document.querySelectorAll(`main ${it}`),
    ),
    ...limits,
  ].filter((it) => !it.classList.contains('drawn'));
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
  const head = textOf(row?.querySelector('th') ?? null);
  // Said of the whole line, or of those that have no ±.
  const ofSome = text.includes('±') ? undefined : / no ±: (.*)$/.exec(head)?.[1];
  const notKnown = ofSome ? `± not known: ${ofSome}` : /± not known.*$/.exec(head)?.[0];
  // That there is a range alone stands in the place of the reading, and what is no time has no uncertainty.
  const isRange =
    textOf(row?.querySelector('td') ?? null).startsWith('not read there') || /s not limited by/.test(text);
  const figure = text.replace(/^at (?=\d)/, '').replace(/ corrected \d+ \w+ \d{4}$/, '');
  return [figure, notKnown ?? (isRange && !/^[<>]/.test(figure) ? '± not known' : '')].join(' ').trim();
}

/** The unit of a place's figure: behind it, or in the head of its column or line. Multiples are called times. */
function unitAt(place: HtmlElement, written: string): string {
  if (written !== '') return written === 'times' ? '' : written;
  if (textOf(place.parent?.querySelector('dt') ?? null) === 'A watt of light') return '/W';
  if (headOf(place) === 'A watt of light') return '/W';
  const heads = [headOf(place.closest('td') ?? place), textOf(place.closest('tr')?.querySelector('th') ?? null)];
  if (/^Seconds /.test(heads[0] ?? '')) return 's';
  return (
    heads
      .flatMap((head) => /, (\S+)(?= of mean|(?: no)? ±| (?:in part )?from \d|$)/.exec(head)?.[1] ?? [])
      .find((it) => UNITS.has(it)) ?? ''
  );
}

/** The link from a figure to its working. */
function calculationLink(cell: HtmlElement): HtmlElement | undefined {
  return cell.querySelectorAll('a').find((it) => attribute(it, 'href').includes('methodology/#'));
}

/** Columns of a panel's page whose numbers are not measured: what was claimed and paid. */
const EXACT = ['Price', 'List', 'Paid'];

/** Units as pages write them behind a number. */
/** Those that are told on the calculation page: files have a page of their own. */
const HERE = METRICS.filter((it) => !it.isOfFiles);

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
      const isReasonGiven = parts.notKnown || parts.bound;
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
    expect(HERE.map((it) => it.id).filter((id) => !ids.has(id))).toEqual([]);
  });

  test.each(dates)('has a place for every metric of the session of %s, for good', (date) => {
    expect(ids).toContain(`session-${date}`);
    expect(HERE.map((it) => `${it.id}-${date}`).filter((id) => !ids.has(id))).toEqual([]);
  });

  test('names the method and the basis of each figure, its lasting address, and a budget or why there is none', () => {
    const sections = page.document.querySelectorAll('.by details');
    expect(sections.length).toBeGreaterThan(10);
    for (const section of sections) {
      const where = `#${attribute(section, 'id')}`;
      const text = textOf(section);
      expect(attribute(section.parent?.querySelector('p a') ?? null, 'href'), where).toMatch(/^\/methods\/[\w-]+\/$/);
      expect(textOf(section.parent?.querySelector('p') ?? null), where).toMatch(
        /\S, version \d+; (measured|derived|modelled|claimed)$/,
      );
      // A link is made of it by the page's script.
      const dated = attribute(section.querySelector('summary'), 'id');
      expect(dated, where).toBe(`${attribute(section, 'id')}-${dates[0]}`);
      const hasBudget = /±(, in %)?: /.test(text);
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

/** The day of the session whose figure it is, where that is an earlier one's as it stands. */
function carriedWhole(figure: DataFigure): string | undefined {
  const { carried_over: carried } = figure as { carried_over?: { from: string[]; in_part: boolean } };
  return carried && !carried.in_part && carried.from.length === 1 ? carried.from[0] : undefined;
}

describe.each(published)('the working of %s and the data files', (slug) => {
  const page = calculationPage(slug);
  const panel = bySlug.get(slug) as (typeof data.panels)[number];

  test.each(panel.sessions.map((it) => it.date))('agree on %s', (date) => {
    const session = panel.sessions.find((it) => it.date === date);
    const isCurrent = session === panel.sessions[0];
    for (const [metric, figure] of Object.entries(session?.figures ?? {})) {
      const where = HERE.some((it) => it.id === metric) ? page : pageAt(`/panels/${slug}/files/`);
      const element = where.document.querySelector(`#${metric}${isCurrent ? '' : `-${date}`}`);
      expect(element, metric).not.toBeNull();
      if (!isKnown(figure)) expect(textOf(reasonOf(element)), metric).toContain((figure as { reason: string }).reason);
      else {
        const { value, unit, method, method_version, basis, interval95 } = figure as Extract<
          DataFigure,
          { value: number }
        >;
        // Values by distance are cells of one table, which says once how they were come by.
        const isCell = element?.tagName === 'td';
        const account = isCell ? element.closest('details') : element;
        const from = carriedWhole(figure);
        // The account is that of the session that has the readings.
        if (from !== undefined) expect(attribute(element as HtmlElement, 'href')).toBe(`#${metric}-${from}`);
        else if (isCurrent) {
          const by = (isCell ? account : element?.parent)?.querySelectorAll('a') ?? [];
          const link = by.find((it) => attribute(it, 'href') === `/methods/${method}/`);
          const said = textOf(link?.parent ?? null);
          if (isCell) {
            expect(said, metric).toMatch(new RegExp(`, version ${method_version}$`));
            expect(textOf(account), metric).toMatch(new RegExp(`(^|\\W)${basis}\\W`));
          } else expect(said, metric).toMatch(new RegExp(`, version ${method_version}; ${basis}$`));
        }
        const told =
          from === undefined ? element?.querySelector('b') : page.document.querySelector(`#${metric}-${date}`);
        const printed = takeApart(textOf(isCell ? element : (told ?? null)));
        expect(rounds(printed, value, interval95), metric).toBe(true);
        expect(printed, metric).toMatchObject(pageUnit(unit, data.currency));
      }
    }
  });

  /** Units as they are typed: on the page they have their signs. */
  const asTyped = (text: string) => text.replaceAll('²', '2').replaceAll('µ', 'u').replaceAll('°C', 'C');

  test('have every raw reading, as written, struck out where it was', () => {
    for (const session of panel.sessions) {
      expect(session.readings.length).toBeGreaterThan(5);
      const part = page.document.querySelector(`#session-${session.date}`)?.closest('section, details') ?? null;
      const text = textOf(part);
      const grid = part?.querySelectorAll('.grid9 td').map(textOf) ?? [];
      const unit = /, (.+)$/.exec(textOf(part?.querySelector('.grid9 caption') ?? null))?.[1] ?? '';
      for (const it of session.readings) {
        const isPoint = it.path.startsWith('grid.rows');
        const written = (isPoint ? asTyped(it.written).replace(asTyped(unit), '') : it.written)
          .replace(/\s+/g, ' ')
          .trim();
        const wanted = it.struck === undefined ? written : `${written} struck out: ${it.struck}`;
        const texts = isPoint ? grid : [text];
        expect(
          texts.some((one) => asTyped(one).includes(asTyped(wanted).replace(/\s+/g, ' ').trim())),
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
