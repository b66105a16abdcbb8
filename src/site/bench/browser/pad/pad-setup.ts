/** What the pad's page asks of the guide's bench. No DOM. */
import { type InstrumentKind, type InstrumentQuantity, quantityOf } from '../../../../content/schema/instrument.ts';
import { calibrationDue, instrumentOf } from '../../../../ledger/instruments.ts';
import type { BenchPanel, BenchSetup } from '../bench-data.ts';
import type { CalibrationSpan } from '../calibration-state.ts';
import { openSetup } from '../open-setup.ts';
import type { Run } from '../run.ts';

/** A meter as regards one quantity that it reads. */
export interface PadMeter {
  id: string;
  name: string;
  spans: readonly CalibrationSpan[];
  quantity: InstrumentQuantity;
}

export interface PadSetup {
  bench: BenchSetup;
  currency: string;
  /** By name. */
  panels: readonly BenchPanel[];
  makers: ReadonlyArray<{ id: string; name: string }>;
  meters(kind: InstrumentKind): readonly PadMeter[];
  /** Step of the display of a run's meter, in the canonical unit; 0 where it has none. */
  resolution(run: Run, kind: InstrumentKind): number;
  /** Sides of a panel's LED field, as its file has them. */
  field(slug: string): { width: string; height: string } | undefined;
}

/** @throws where the data are not what a build writes */
export function padSetup(bench: BenchSetup): PadSetup {
  const { guide, instruments, makers } = openSetup(bench).entries;
  const meters = (kind: InstrumentKind) =>
    [...instruments.values()].flatMap(({ id, data }): PadMeter[] => {
      const quantity = quantityOf(data, kind);
      if (!quantity) return [];
      const spans = quantity.calibrations.map((it) => ({ date: it.date, due: calibrationDue(it) }));
      return [{ id, name: data.name, spans, quantity }];
    });
  return {
    bench,
    currency: guide.data.currency,
    panels: bench.panels.toSorted((a, b) => a.name.localeCompare(b.name, 'en')),
    makers: [...makers.values()].map(({ id, data }) => ({ id, name: data.name })),
    meters,
    resolution: (run, kind) => {
      const meter = meters(kind).find((it) => it.id === run.instruments[kind]);
      return meter ? instrumentOf(meter.id, meter.quantity, run.date).resolution : 0;
    },
    field: (slug) => bench.panels.find((it) => it.slug === slug)?.field,
  };
}
