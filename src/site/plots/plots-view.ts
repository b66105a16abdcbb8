import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { impossibility } from '../../measure/handed-on.ts';
import { type MetricId, rangeFilters } from '../../measure/metrics.ts';
import { carriedWords } from '../../words/carried-words.ts';
import { reasonText } from '../../words/figure-text.ts';
import { type Dagger, markOf } from '../../words/flags.ts';
import { money, type Shown, showFigure } from '../../words/format.ts';
import { figureNumbers } from '../export/data-parts.ts';
import { rowDataOf, wavelengthsOf } from '../guide/guide-filter-view.ts';
import { panelAddress } from '../shared/panel-address.ts';

/** One point of a plot, which is a row of the table behind it. */
export interface PlotPoint {
  name: string;
  /** The model, where that is one alone: it stands beside the point in the name's place. */
  short?: string;
  address: string;
  /** Size class, for the row, and by its id for the filters. */
  group: string;
  classId: string;
  /** What it can be filtered by, as in the guide. */
  filter: string;
  /** Measured peaks, nm, for the guide's filter. */
  wavelengths: string;
  x: number;
  y: number;
  /** Ends of the 95 % interval of y; undefined where it is not known. */
  low?: number;
  high?: number;
  xText: string;
  yText: string;
  /** Its numbers in one line, to stand behind name and size class. */
  words: string;
  /** On the frontier. */
  isOn?: boolean;
  /** The mark of its y, where that is in doubt. */
  dagger?: Dagger;
  /** From which day its numbers are, where their readings were not taken again. */
  carried?: string;
  xCarried?: string;
}

/** A plot and the table behind it. */
export interface Plot {
  id: string;
  title: string;
  /** What it shows, in a sentence. */
  about: string;
  method: { address: string; name: string };
  xLabel: string;
  yLabel: string;
  /** Names along x, where it counts groups instead of a quantity. */
  names?: string[];
  /** A line through the points that are on the frontier. */
  hasFrontier: boolean;
  points: PlotPoint[];
  /** Panels that are not in it, with the reason. */
  absent: Array<{ name: string; address: string; reason: string }>;
}

/** Why a panel is in no plot whose figure has a double dagger. */
const IMPOSSIBLE = 'impossible as it stands, see its flags';

/** The plots of the guide, from the panels that it ranks. */
export function plotsView(ledger: Ledger): Plot[] {
  const { currency } = ledger.guide;
  const sign = money(0, currency, 0).replace('0', '').trim();
  const ranked = ledger.classes.flatMap((it) => it.groups.flatMap((group) => group.panels));
  const reference = ranked.filter((it) => it.current?.conditions.isReference);
  const otherwise = ranked
    .filter((it) => !it.current?.conditions.isReference)
    .map((it) => ({ ...named(it), reason: `measured at ${it.current?.conditions.distance} cm` }));
  const impossible = ledger.classes
    .flatMap((it) => it.unranked)
    .filter(({ figures }) => {
      const it = figures.get('price-per-watt');
      return isFigure(it) && impossibility(it);
    })
    .map((it) => ({ ...named(it), reason: IMPOSSIBLE }));
  const left = [...otherwise, ...impossible];
  const models = [...ledger.panels.values()].map((it) => it.data.model);
  const classes = ledger.classes.flatMap((it) => it.sizeClass ?? []);
  const filters = rangeFilters().map((it) => it.filter.key);
  const plot = (
    panels: readonly PanelEntry[],
    xOf: (panel: PanelEntry) => { value: number; text: string; words: string; carried?: string } | undefined,
    yMetric: MetricId,
  ): Pick<Plot, 'points' | 'absent'> => {
    const points: PlotPoint[] = [];
    const absent: Plot['absent'] = [];
    for (const panel of panels) {
      const x = xOf(panel);
      const y = panel.figures.get(yMetric);
      if (!x || !isFigure(y)) {
        absent.push({ ...named(panel), reason: reasonText(y) });
        continue;
      }
      if (impossibility(y)) {
        absent.push({ ...named(panel), reason: IMPOSSIBLE });
        continue;
      }
      const { value, interval95 } = figureNumbers(y);
      const dagger = markOf(y);
      const carried = carriedWords(y);
      points.push({
        ...named(panel),
        ...(models.filter((it) => it === panel.data.model).length === 1 && { short: panel.data.model }),
        group: panel.sizeClass?.name ?? '',
        classId: panel.sizeClass?.id ?? '',
        filter: rowDataOf(panel, filters),
        wavelengths: wavelengthsOf(panel).join(' '),
        x: x.value,
        xText: x.text,
        y: value,
        yText: withoutUnit(showFigure(y, currency)),
        words: `${x.words}${showFigure(y, currency).text}${dagger ? '; in doubt' : ''}${carried ? `; ${carried}` : ''}`,
        ...(interval95 && { low: interval95[0], high: interval95[1] }),
        ...(panel.frontier === 'on' && { isOn: true }),
        ...(dagger && { dagger }),
        ...(carried && { carried }),
        ...(x.carried && { xCarried: x.carried }),
      });
    }
    return { points, absent };
  };
  const figureOf = (metric: MetricId) => (panel: PanelEntry) => {
    const it = panel.figures.get(metric);
    return isFigure(it) ? shownX(it, currency) : undefined;
  };
  const power = plot(reference, figureOf('real-price'), 'optical-power');
  const perWatt = plot(
    reference,
    ({ sizeClass }) => {
      const index = classes.findIndex((it) => it.id === sizeClass?.id);
      return index < 0 ? undefined : { value: index, text: sizeClass?.name ?? '', words: '' };
    },
    'price-per-watt',
  );
  const efficiency = plot(reference, figureOf('mains-draw-combined'), 'efficiency-combined');
  return [
    {
      id: 'power-by-price',
      title: 'Light against price',
      about:
        'Up and left: more light for less, on scales of equal ratios. Nothing beats the diamonds, joined by steps, on both.',
      method: { address: '/methods/frontier/', name: 'How it is drawn' },
      xLabel: `price, ${sign}`,
      yLabel: 'light, W',
      hasFrontier: true,
      points: power.points.toSorted((a, b) => a.x - b.x),
      absent: [...power.absent, ...left],
    },
    {
      id: 'price-per-watt',
      title: 'A watt of light, by size',
      about: 'Lower: less money for a watt in the frame. Small panels lose more of their light past its edges.',
      method: { address: '/methods/price-per-watt/', name: 'How it is worked out' },
      xLabel: 'size class',
      yLabel: `a watt of light, ${sign}`,
      names: classes.map((it) => it.name),
      hasFrontier: false,
      points: perWatt.points.toSorted((a, b) => a.x - b.x || a.y - b.y),
      absent: [...perWatt.absent, ...left],
    },
    {
      id: 'efficiency',
      title: 'Efficiency against mains draw',
      about: 'Higher: more of the mains power turned into light in the frame.',
      method: { address: '/methods/efficiency/', name: 'How it is worked out' },
      xLabel: 'mains draw, both channels, W',
      yLabel: 'efficiency, %',
      hasFrontier: false,
      points: efficiency.points.toSorted((a, b) => a.x - b.x),
      absent: [...efficiency.absent, ...left],
    },
  ];
}

function named({ name, slug }: PanelEntry): { name: string; address: string } {
  return { name, address: panelAddress(slug) };
}

function shownX(figure: Figure, currency: string): { value: number; text: string; words: string; carried?: string } {
  const shown = showFigure(figure, currency);
  const carried = carriedWords(figure);
  const text = carried ? `${shown.text} ${carried}` : shown.text;
  return { value: figure.value, text: withoutUnit(shown), words: `${text}, `, ...(carried && { carried }) };
}

/** A figure in a column whose head has its unit. */
function withoutUnit({ value, plusMinus, interval }: Shown): string {
  return `${value}${plusMinus === undefined ? '' : ` ± ${plusMinus}`}${interval === undefined ? '' : ` (${interval})`}`;
}
