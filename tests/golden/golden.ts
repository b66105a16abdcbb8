/**
 * What the golden file holds: every figure of the demonstration as the code of its day gave it, and for each panel a
 * hash of what it was worked out from. A number that moves while the readings stand still has to have a reason: a
 * raised version of its method, or of one that it rests on.
 */
import { createHash } from 'node:crypto';
import { type Figure, isFigure } from '../../src/measure/figure.ts';
import { methodReference, methodText } from '../../src/measure/method-versions.ts';
import type { Demo } from '../support/demo-ledger.ts';

/** A figure, as far as its numbers and their reasons go. */
export interface GoldenFigure {
  value: number;
  unit: string;
  interval: readonly [number, number] | null;
  /** `optical-power@1` */
  method: string;
  /** Ids of the figures that it was worked out from. */
  inputs: readonly string[];
}

/** All of a guide's figures by id, and a hash of each panel's readings with the guide's and the instruments' files. */
export interface Golden {
  panels: ReadonlyMap<string, string>;
  figures: ReadonlyMap<string, GoldenFigure>;
}

/** Takes every figure of a ledger: of all sessions, of the panels as a whole, of all prices, and the ranks. */
export function goldenOf({ content, ledger }: Demo): Golden {
  const figures = new Map<string, GoldenFigure>();
  const put = (id: string, it: Figure) =>
    figures.set(id, {
      value: it.value,
      unit: it.unit,
      interval: it.interval95,
      method: methodText(it.method),
      inputs: it.inputs.flatMap(published),
    });
  const panels = new Map<string, string>();
  const common = [content.guide.data, ...[...content.instruments.values()].map((it) => it.data)];

  for (const [slug, panel] of ledger.panels) {
    panels.set(slug, hashOf([panel.data, ...common, ledger.today]));
    for (const session of panel.sessions) {
      for (const it of session.figures.values()) if (isFigure(it)) put(it.id, it);
      for (const { figure, id } of session.limits) if (isFigure(figure)) put(`${session.id}/${id}`, figure);
      if (isFigure(session.change)) put(session.change.id, session.change);
    }
    for (const it of panel.figures.values()) if (isFigure(it)) put(it.id, it);
    for (const { price, figure, perWatt } of panel.prices) {
      put(`${slug}/prices/${price.date}`, figure);
      if (isFigure(perWatt)) put(`${slug}/prices/${price.date}/per-watt`, perWatt);
    }
    for (const [basis, rank, metric] of [
      ['rank', panel.rank, 'price-per-watt'],
      ['rank-by-emitted', panel.byEmitted.rank, 'price-per-emitted-watt'],
    ] as const) {
      const resting = panel.figures.get(metric);
      if (!rank || !isFigure(resting)) continue;
      const inputs = [resting.id];
      const place = {
        value: rank.place,
        unit: `of ${rank.of}`,
        interval: rank.range,
        method: methodText(methodReference('rank')),
      };
      figures.set(`${slug}/${basis}`, { ...place, inputs });
      figures.set(`${slug}/${basis}/ties`, {
        ...place,
        value: rank.tiedWith.length,
        unit: 'panels',
        interval: null,
        inputs,
      });
    }
  }
  return { panels, figures };
}

/** Figures that are worked out on the way and shown nowhere, each as the published ones that it rests on. */
const ON_THE_WAY: ReadonlyArray<[RegExp, readonly string[]]> = [
  [/\/net-draw-([a-z-]+)$/, ['/mains-draw-$1', '/mains-draw-standby']],
  [/\/peak-irradiance-at-[\d.]+-cm$/, ['/peak-irradiance-at-30-cm']],
];

function published(id: string): string[] {
  const found = ON_THE_WAY.find(([pattern]) => pattern.test(id));
  return found ? found[1].map((instead) => id.replace(found[0], instead)) : [id];
}

function hashOf(data: unknown): string {
  return createHash('sha256').update(JSON.stringify(data)).digest('base64url').slice(0, 16);
}

/** The file's text: a line a panel and a line a figure, sorted, so that what moves shows in a difference. */
export function goldenText({ panels, figures }: Golden): string {
  const lines = [
    ...[...panels].map(([slug, hash]) => JSON.stringify(['panel', slug, hash])),
    ...[...figures].map(([id, it]) =>
      JSON.stringify([id, it.value, it.unit, it.interval, it.method, ...(it.inputs.length > 0 ? [it.inputs] : [])]),
    ),
  ];
  return `${lines.toSorted().join('\n')}\n`;
}

/** Reads what `goldenText` wrote. */
export function parseGolden(text: string): Golden {
  const panels = new Map<string, string>();
  const figures = new Map<string, GoldenFigure>();
  for (const line of text.trim().split('\n')) {
    const fields = JSON.parse(line);
    if (fields[0] === 'panel') panels.set(fields[1], fields[2]);
    else {
      const [id, value, unit, interval, method, inputs = []] = fields;
      figures.set(id, { value, unit, interval, method, inputs });
    }
  }
  return { panels, figures };
}
