import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { differenceInYears } from 'date-fns/differenceInYears';
import { parseISO } from 'date-fns/parseISO';
import { calledAs } from '../../content/read/called-as.ts';
import { fields } from '../../content/read/fields.ts';
import { counted } from '../../content/read/problem-list.ts';
import { flagPlace } from '../../ledger/flag-place.ts';
import type { PanelEntry } from '../../ledger/ledger.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import { calibrationValid } from '../../measure/checks/calibration-valid.ts';
import { priceAge } from '../../measure/checks/price-age.ts';
import { ASKS_BEYOND_FROM } from '../../measure/irradiance/bench-procedure.ts';
import {
  CALIBRATION_DUE_DAYS,
  OLD_CLAIMS_YEARS,
  OLD_RATE_DAYS,
  OLD_SESSION_YEARS,
  OLD_TARIFF_YEARS,
} from '../../measure/thresholds.ts';
import { money, showDate } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { STALE_KINDS, type StaleItem, staleAt } from './stale-item.ts';

/** Everything in published content that has gone stale by the ledger's day, or soon will, by kind and then the oldest first. */
export function staleItems(loaded: Loaded): StaleItem[] {
  const panels = [...loaded.ledger.panels.values()].filter((it) => it.data.status === 'published');
  return inOrder([
    ...panels.flatMap((panel) => [
      ...flagged(panel, loaded),
      ...oldSession(panel, loaded),
      ...oldProcedure(panel, loaded),
      ...oldClaims(panel, loaded),
    ]),
    ...calibrationsDue(loaded),
    ...guideDates(loaded),
  ]);
}

/** By kind; what is past before what is due, then the oldest, then by place. */
export function inOrder(items: readonly StaleItem[]): StaleItem[] {
  const kind = (it: StaleItem) => STALE_KINDS.indexOf(it.kind);
  const state = (it: StaleItem) => (it.state === 'past' ? 0 : 1);
  return items.toSorted(
    (a, b) =>
      kind(a) - kind(b) ||
      state(a) - state(b) ||
      (a.day ?? '').localeCompare(b.day ?? '') ||
      a.file.localeCompare(b.file, 'en') ||
      a.line - b.line,
  );
}

const daysBetween = (from: string, to: string) => differenceInCalendarDays(parseISO(to), parseISO(from));
const yearsBetween = (from: string, to: string) => differenceInYears(parseISO(to), parseISO(from));

/** What the checks of plausibility have found already: the price's age, and meters that were past their time when they read. */
function flagged(panel: PanelEntry, { content }: Loaded): StaleItem[] {
  const source = content.panels.get(panel.slug)?.source;
  if (!source) return [];
  const { slug, name, data, current: session, figures, flags } = panel;
  return flags.flatMap((flag): StaleItem[] => {
    const path = flagPlace(flag, { slug, data, session, figures });
    if (flag.check === priceAge.id) {
      const price = panel.prices[0]?.price;
      const amount = price ? money(price.paid ?? price.list ?? 0, price.currency) : '';
      return [
        staleAt(source, path, {
          ...{ kind: 'price', state: 'past', day: price?.date ?? null, name },
          text: `${amount}. ${say(flag.finding)}`,
          todo: `look the price up: ${calledAs()} reprice ${slug}`,
        }),
      ];
    }
    if (flag.check !== calibrationValid.id) return [];
    return [
      staleAt(source, path, {
        ...{ kind: 'calibration', state: 'past', day: session?.date ?? null, name },
        text: say(flag.finding),
        todo: 'read again what rests on it, once the meter is calibrated',
      }),
    ];
  });
}

function oldSession({ slug, name, data, current }: PanelEntry, { content, ledger }: Loaded): StaleItem[] {
  const source = content.panels.get(slug)?.source;
  if (!source || !current || yearsBetween(current.date, ledger.today) < OLD_SESSION_YEARS) return [];
  return [
    staleAt(source, sessionPath(data, current.date), {
      ...{ kind: 'session', state: 'past', day: current.date, name },
      text: `last read on ${showDate(current.date)}, ${counted(yearsBetween(current.date, ledger.today), 'year')} ago`,
      todo: `read it again: ${calledAs()} retest ${slug}`,
    }),
  ];
}

function oldProcedure({ slug, name, data, current }: PanelEntry, { content, ledger }: Loaded): StaleItem[] {
  const source = content.panels.get(slug)?.source;
  const version = current?.conditions.methodVersion;
  const wanted = ledger.guide.methodVersion;
  if (!source || !current || version === undefined || version >= wanted) return [];
  const lacks =
    version < ASKS_BEYOND_FROM && wanted >= ASKS_BEYOND_FROM ? ', which asks for readings past the edges' : '';
  return [
    staleAt(source, [...sessionPath(data, current.date), 'methodVersion'], {
      ...{ kind: 'procedure', state: 'past', day: current.date, name },
      text: `read under version ${version} of the bench procedure on ${showDate(current.date)}; the guide’s is ${wanted}${lacks}`,
      todo: 'follow the newer version when it is on the bench next',
    }),
  ];
}

function sessionPath({ sessions }: PanelEntry['data'], date: string): PropertyKey[] {
  return ['sessions', sessions.findIndex((it) => it.date === date)];
}

function oldClaims({ slug, name, data: { claims } }: PanelEntry, { content, ledger }: Loaded): StaleItem[] {
  const source = content.panels.get(slug)?.source;
  if (!source || !claims) return [];
  const { date } = claims;
  if (date !== undefined && yearsBetween(date, ledger.today) < OLD_CLAIMS_YEARS) return [];
  const text =
    date === undefined
      ? 'nobody wrote down when the maker’s claims were read'
      : `the maker’s claims were read on ${showDate(date)}, over ${OLD_CLAIMS_YEARS === 1 ? 'a year' : `${OLD_CLAIMS_YEARS} years`} ago`;
  return [
    staleAt(source, ['claims', ...(date === undefined ? [] : ['date'])], {
      ...{ kind: 'claims', state: 'past', day: date ?? null, name, text },
      todo: 'look whether the maker still claims the same, and write the day as date under claims',
    }),
  ];
}

function calibrationsDue({ content, ledger }: Loaded): StaleItem[] {
  const quantities = ledger.instruments.flatMap(({ id, data, quantities: all }) =>
    all.map((it) => ({ ...it, id, hasBlocks: data.hasBlocks })),
  );
  return quantities.flatMap(({ id, hasBlocks, data, due, overdue, calibrations: [newest] }): StaleItem[] => {
    const source = content.instruments.get(id)?.source;
    const left = daysBetween(ledger.today, due);
    if (!source || !newest || left > CALIBRATION_DUE_DAYS) return [];
    const index = data.calibrations.findIndex((it) => it.date === newest.date);
    // Where calibrations stand once for several quantities, the block has none of its own.
    const block = ['quantities', data.measures, 'calibrations'];
    const path = [...(hasBlocks && fields(source.data, block).length > 0 ? block : ['calibrations']), index];
    const when = left === 0 ? 'today' : `in ${counted(left, 'day')}`;
    return [
      staleAt(source, path, {
        ...{ kind: 'calibration', state: overdue ? 'past' : 'soon', day: due, name: data.name },
        text: overdue
          ? `its calibration ran out on ${showDate(due)}; what it reads now is doubtful`
          : `its calibration runs out ${when}, on ${showDate(due)}`,
        todo: `have it calibrated: ${calledAs()} recalibrate ${id}${hasBlocks ? ` --quantity ${data.measures}` : ''}`,
      }),
    ];
  });
}

function guideDates({ content, ledger: { today, guide } }: Loaded): StaleItem[] {
  const { source } = content.guide;
  const rates = guide.rates.flatMap(({ currency, date }, i) => {
    const days = daysBetween(date, today);
    if (days <= OLD_RATE_DAYS) return [];
    return [
      staleAt(source, ['rates', i, 'date'], {
        ...{ kind: 'rate', state: 'past', day: date, name: `${currency} in ${guide.currency}` },
        text: `the rate is of ${showDate(date)}, ${days} days old; over ${OLD_RATE_DAYS} is old`,
        todo: 'put in the reference rate of the day that prices were seen on',
      }),
    ];
  });
  const { date } = guide.tariff;
  if (yearsBetween(date, today) < OLD_TARIFF_YEARS) return rates;
  return [
    ...rates,
    staleAt(source, ['tariff', 'date'], {
      ...{ kind: 'tariff', state: 'past', day: date, name: 'Electricity' },
      text: `the tariff is of ${showDate(date)}; over ${OLD_TARIFF_YEARS === 1 ? 'a year' : `${OLD_TARIFF_YEARS} years`} is old`,
      todo: 'look up what a kilowatt-hour costs now',
    }),
  ];
}
