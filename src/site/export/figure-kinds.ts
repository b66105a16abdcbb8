import type { Ledger } from '../../ledger/ledger.ts';
import { type Basis, type Figure, isFigure } from '../../measure/figure.ts';
import { methodReference } from '../../measure/method-versions.ts';
import { METRICS } from '../../measure/metrics.ts';
import { dataUnit, publishedPanels } from './data-parts.ts';

/** What the figures of a metric have alike; a figure says only what it has otherwise. */
export interface FigureKind {
  unit: string;
  basis: Basis;
  method: string;
  method_version: number;
  /** What its id begins with: the panel's slug, or slug and day of the session. */
  of: 'panel' | 'session';
}

/** Kinds of figures by metric. */
export type FigureKinds = Readonly<Record<string, FigureKind>>;

/** An id is slug and metric, with the day of the session between them where it is a session's. */
const ownerOf = ({ id }: Figure): FigureKind['of'] => (id.indexOf('/') < id.lastIndexOf('/') ? 'session' : 'panel');

/** What the figures of each metric have alike: of basis and owner, what most have. It goes through all panels. */
export function figureKinds(ledger: Ledger): FigureKinds {
  const { currency } = ledger.guide;
  const seen = new Map<string, Map<string, { count: number; basis: Basis; of: FigureKind['of'] }>>();
  for (const panel of publishedPanels(ledger)) {
    for (const it of panel.figures.values()) {
      if (!isFigure(it)) continue;
      const [basis, of] = [it.basis, ownerOf(it)];
      const ways = seen.get(it.metric) ?? new Map();
      seen.set(it.metric, ways);
      const way = ways.get(`${basis} ${of}`) ?? { count: 0, basis, of };
      way.count++;
      ways.set(`${basis} ${of}`, way);
    }
  }
  return Object.fromEntries(
    METRICS.map(({ id, unit, method }) => {
      const [usual] = [...(seen.get(id)?.values() ?? [])].toSorted((a, b) => b.count - a.count);
      const { basis, of } = usual ?? ({ basis: 'derived', of: 'session' } as const);
      const { version } = methodReference(method);
      return [id, { unit: dataUnit(unit, currency), basis, method, method_version: version, of }];
    }),
  );
}

/** The figures of a step up, which are no panel's alone. */
export function stepUpKinds(currency: string): Record<'power' | 'price-per-watt', Omit<FigureKind, 'of'>> {
  const shared = { basis: 'derived', method: 'step-up', method_version: methodReference('step-up').version } as const;
  return {
    power: { unit: 'W', ...shared },
    'price-per-watt': { unit: dataUnit('currency/W', currency), ...shared },
  };
}
