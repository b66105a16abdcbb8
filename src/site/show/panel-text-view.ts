import type { Ledger, PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type FigureMap, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { METRICS } from '../../measure/metrics.ts';
import { notKnownWords } from '../../words/figure-words.ts';
import { markOf, SEVERITY_WORDS } from '../../words/flags.ts';
import { fixed, money, showDate, showFigure } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { GROUPS, groupOf } from '../calculation/figure-groups.ts';
import { isLeftOut } from '../export/figure-rows.ts';
import { rankSentence } from '../guide/rank-sentence.ts';
import { claimsView } from '../panel/claims-view.ts';
import type { Row, Section } from '../shared/told.ts';

/** A panel in plain words: its head, and its sections in the order of its page. */
export interface PanelText {
  title: string;
  lines: string[];
  sections: Section[];
}

/**
 * One panel for the terminal: what its page says, without drawings and methods.
 *
 * @param session the one whose figures are wanted; the newest where it is left out
 */
export function panelText(panel: PanelEntry, ledger: Ledger, session = panel.current): PanelText {
  const { guide } = ledger;
  const isNewest = session === panel.current;
  const figures = isNewest ? panel.figures : (session?.figures ?? panel.figures);
  return {
    title: panel.name,
    lines: [
      [panel.slug, panel.data.status, panel.sizeClass?.name ?? 'no size class', readWords(session)].join(' · '),
      ...(panel.data.statusReason ? [panel.data.statusReason] : []),
      ...(panel.data.verdict ? [panel.data.verdict] : []),
    ],
    sections: [
      ...(isNewest
        ? [
            {
              title: 'Place',
              rows: [
                { name: 'Light in the frame', text: rankSentence(panel, ledger, 'optical') },
                { name: 'All the light', text: rankSentence(panel, ledger, 'emitted') },
              ],
            },
          ]
        : []),
      ...section('Flags', flagRows(isNewest ? panel.flags : (session?.flags ?? []))),
      ...figureSections(figures, guide.currency),
      ...gapSection(figures),
      ...section('The maker’s claims', claimRows(panel, session, guide.currency)),
      ...section('Prices', priceRows(panel)),
      ...section('Sessions', sessionRows(panel, session)),
    ],
  };
}

const section = (title: string, rows: readonly Row[]): Section[] => (rows.length > 0 ? [{ title, rows }] : []);

function readWords(session: SessionEntry | undefined): string {
  if (!session) return 'never on the bench';
  const { distance, methodVersion } = session.conditions;
  return `read ${showDate(session.date)} at ${fixed(distance, Number.isInteger(distance) ? 0 : 2)} cm, bench procedure ${methodVersion}`;
}

function figureSections(figures: FigureMap, currency: string): Section[] {
  const known = METRICS.flatMap(({ id, name }) => {
    const it = figures.get(id);
    return isFigure(it) ? [{ id, row: { name, text: figureLine(it, currency) } }] : [];
  });
  return GROUPS.flatMap((group) =>
    section(
      group,
      known.filter(({ id }) => groupOf(id) === group).map(({ row }) => row),
    ),
  );
}

/** Why figures are not there, each reason once. */
function gapSection(figures: FigureMap): Section[] {
  const gaps = METRICS.flatMap((metric) => {
    const it: FigureOrGap | undefined = figures.get(metric.id);
    return it && !isFigure(it) && !isLeftOut(metric, it) ? [{ name: metric.name, reason: say(it.reason) }] : [];
  });
  const byReason = Map.groupBy(gaps, (it) => it.reason);
  return section(
    'Not known',
    [...byReason].map(([reason, all]) => ({ name: all.map((it) => it.name).join('; '), text: reason })),
  );
}

function figureLine(it: Exclude<FigureOrGap, { gap: true }>, currency: string): string {
  const { text, absent } = showFigure(it, currency);
  const mark = markOf(it)?.mark;
  return [text, ...(absent ? [notKnownWords(say(absent))] : []), ...(mark ? [mark] : [])].join(' ');
}

/** Worst first; the same said of several figures stands once. */
function flagRows(flags: PanelEntry['flags']): Row[] {
  const weight = { impossible: 0, doubt: 1, note: 2 } as const;
  const rows = flags
    .toSorted((a, b) => weight[a.severity] - weight[b.severity])
    .map((it) => ({ name: SEVERITY_WORDS[it.severity], text: say(it.finding) }));
  return [...new Map(rows.map((it) => [it.text, it])).values()];
}

function claimRows(panel: PanelEntry, session: SessionEntry | undefined, currency: string): Row[] {
  const { claims, unchecked, claimsRead } = claimsView(
    session ? { ...panel, claims: session.claims } : panel,
    currency,
  );
  return [
    ...claims.map(({ subject, claimed, measured, outcome, dagger }) => ({
      name: `${subject}, ${claimed}`,
      text: `measured ${measured}${dagger ? ` ${dagger.mark}` : ''}: ${outcome}`.replace('measured not', 'not'),
    })),
    ...(unchecked.length > 0 ? [{ name: 'not read', text: unchecked.join('; ') }] : []),
    ...(claimsRead ? [{ name: '', text: `As the maker had them on ${claimsRead}.` }] : []),
  ];
}

/** As they were asked, newest first. */
function priceRows({ prices }: PanelEntry): Row[] {
  return prices.map(({ price: { date, list, paid, currency, discountCode, note } }) => {
    const amounts = [
      ...(paid === undefined ? [] : [`${money(paid, currency)} paid`]),
      ...(list === undefined ? [] : [`${money(list, currency)} list`]),
      ...(discountCode.needed ? ['with a code'] : []),
    ];
    return { name: showDate(date), text: `${amounts.join(', ')}${note ? `. ${note}` : ''}` };
  });
}

function sessionRows({ sessions }: PanelEntry, shown: SessionEntry | undefined): Row[] {
  if (sessions.length < 2) return [];
  return sessions.map((it, i) => ({
    name: it.date,
    text: [readWords(it), ...(i === 0 ? ['the newest'] : []), ...(it === shown ? ['shown here'] : [])].join('; '),
  }));
}
