import type { MetricId } from '../../measure/metrics.ts';
import { notKnownWords } from '../../words/figure-words.ts';
import { listed } from '../../words/format.ts';
import type { ShownFigure } from '../shared/shown-figure.ts';
import type { ReadingsView } from './readings-view.ts';
import { sharedDay, undated } from './shared-day.ts';
import { unitless } from './unitless.ts';

/** A line of the table by channel: one quantity for both channels, red alone and near-infrared alone. */
export interface ChannelRow {
  name: string;
  /** What all numbers of the line are in. */
  unit: string;
  method: string;
  /** That and why the uncertainty is not known of all of them, or of those without one. */
  absent?: string;
  /** From which day all of them are. */
  carried?: string;
  cells: Array<{ figure?: ShownFigure; under?: ShownFigure }>;
}

/** Light, draw and flicker by channel, and what has no line there. */
export interface ChannelsView {
  heads: string[];
  rows: ChannelRow[];
  /** Peak wavelengths, nm, to be drawn; empty where none was read. */
  peaks: number[];
  /** What holds for figures of single channels, once. */
  notes: string[];
  /** What was not read, with its reason. */
  unread: string[];
  standby: ShownFigure | undefined;
  hour: ShownFigure | undefined;
  methods: Array<{ address: string; name: string }>;
}

/** The figures by channel in lines that say something. */
export function channelsView({ light, times }: Pick<ReadingsView, 'light' | 'times'>): ChannelsView {
  const own = (metric: MetricId) => times.find((it) => it.metric === metric);
  const wave = (channel: 'red' | 'near-infrared') => ({
    figure: own(`wavelength-${channel}`),
    under: own(`fwhm-${channel}`),
  });
  const waves = [wave('red'), wave('near-infrared')];
  const all: Array<{
    name: string;
    method: string;
    cells: Array<{ figure?: ShownFigure | undefined; under?: ShownFigure | undefined }>;
  }> = [
    ...light.rows.map(({ name, method, cells }) => ({ name, method, cells: cells.map((figure) => ({ figure })) })),
    { name: 'Peak wavelength and width', method: '/methods/wavelength/', cells: [{}, ...waves] },
  ];
  const isRead = (it: { figure?: ShownFigure | undefined }) => it.figure?.shown !== undefined;
  const known = all.filter((it) => it.cells.some(isRead));
  // What is told of a channel alone; a note of both channels stands with its figure's account.
  const notesOf = (cells: (typeof all)[number]['cells']) =>
    cells.flatMap(({ figure, under }) => [...(figure?.notes ?? []), ...(under?.notes ?? [])]);
  const ofBoth = new Set(known.flatMap((it) => notesOf(it.cells.slice(0, 1))));
  const ofOne = new Set(known.flatMap((it) => notesOf(it.cells.slice(1))).filter((it) => !ofBoth.has(it)));
  const extra = [own('mains-draw-standby'), own('running-cost')];
  return {
    heads: light.heads,
    rows: known.map(rowOf),
    peaks: waves.flatMap(({ figure }) => (figure?.shown ? [Number(figure.shown.value.replaceAll(',', ''))] : [])),
    notes: [...ofOne],
    unread: unreadOf([
      ...all
        .filter((it) => !it.cells.some(isRead))
        .map((it) => [it.name, it.cells.find((one) => one.figure)?.figure] as const),
      ['Standby', extra[0]],
      ['Cost of an hour', extra[1]],
    ]),
    standby: extra[0]?.shown && extra[0],
    hour: extra[1]?.shown && extra[1],
    methods: [...Map.groupBy(known, (it) => it.method)].map(([address, [first]]) => ({
      address,
      name: first?.name.toLowerCase() ?? '',
    })),
  };
}

function rowOf({
  name,
  method,
  cells,
}: {
  name: string;
  method: string;
  cells: Array<{ figure?: ShownFigure | undefined; under?: ShownFigure | undefined }>;
}): ChannelRow {
  const figures = cells.flatMap((it) => (it.figure?.shown ? [it.figure] : []));
  const absent = sharedReason(figures);
  const carried = sharedDay(cells.flatMap(({ figure, under }) => [figure, under]));
  const bare = (it: ShownFigure): ShownFigure => {
    const { absent: own, ...rest } = unitless(undated(it, carried));
    return own === undefined || own === absent ? rest : { ...rest, absent: own };
  };
  return {
    name,
    unit: figures[0]?.shown?.unit ?? '',
    method,
    ...(absent && { absent: figures.every((it) => it.absent) ? notKnownWords(absent) : `no ±: ${absent}` }),
    ...(carried && { carried }),
    cells: cells.map(({ figure, under }) => ({
      ...(figure && { figure: bare(figure) }),
      ...(under?.shown && { under: unitless(undated(under, carried)) }),
    })),
  };
}

/** Why ± is missing, where all figures of a line or two at least have one reason: it is said once, at the line's head. */
function sharedReason(figures: readonly ShownFigure[]): string | undefined {
  const reasons = figures.flatMap((it) => it.absent ?? []);
  const [first] = reasons;
  const isShared = reasons.length === figures.length || reasons.length > 1;
  return isShared && reasons.every((it) => it === first) ? first : undefined;
}

/** "Flicker and flicker frequency: not measured" */
export function unreadOf(gaps: ReadonlyArray<readonly [name: string, figure: ShownFigure | undefined]>): string[] {
  const there = gaps.flatMap(([name, it]) => (it?.gap === undefined ? [] : [{ name, reason: it.gap }]));
  return [...Map.groupBy(there, (it) => it.reason)].map(([reason, own]) => {
    const names = listed(own.map((it, i) => (i === 0 ? it.name : it.name.charAt(0).toLowerCase() + it.name.slice(1))));
    return `${names}: ${reason}`;
  });
}
