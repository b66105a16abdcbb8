import { z } from 'zod';
import { UsageError } from '../../content/read/usage-error.ts';
import { listed } from '../../words/format.ts';
import { type TextRef, textOf } from '../shared/browser/text-ref.ts';
import type { RankedGuide, RankedPanel } from './compare-ranks.ts';
import type { FigureState, GuideState, PanelState, RankState, SessionState } from './guide-state.ts';
import { methodAddress, panelPages } from './state-of-ledger.ts';

/** Forms of `panels.json` that can be read. */
export const READABLE_FORMATS: readonly number[] = [3, 4, 5];

const textRef = z.union([z.int(), z.tuple([z.int()], z.string())]);

const kind = z.looseObject({
  unit: z.string(),
  basis: z.enum(['measured', 'derived', 'modelled', 'claimed']),
  method: z.string(),
  method_version: z.int(),
});

const more = z.looseObject({
  ...kind.partial().shape,
  bound: z.enum(['below', 'above']).optional(),
});

const figure = z.union([
  z.tuple([z.number(), z.number().nullable(), z.number().nullable(), z.number().nullable()], more),
  z.looseObject({ reason: textRef }),
]);

/** By their metrics up to format 4, since then behind the place of the list that names these. */
const figures = z.union([z.tuple([z.int()], figure), z.record(z.string(), figure)]);

const rank = z.looseObject({
  place: z.int(),
  of: z.int(),
  range: z.tuple([z.int(), z.int()]).nullable(),
  // In format 3 by their names, since then by their places.
  tiedWith: z.array(z.union([z.string(), z.int()])),
});

const session = z.looseObject({
  date: z.string(),
  figures,
  flags: z.array(
    z.looseObject({
      check: z.string(),
      severity: z.enum(['note', 'doubt', 'impossible']),
      text: textRef,
      concerns: z.array(z.string()),
    }),
  ),
  claims: z.array(
    z.looseObject({ subject: textRef, claimed: z.number(), unit: z.string(), outcome: z.string(), text: textRef }),
  ),
});

const ranked = z.looseObject({
  slug: z.string(),
  maker: z.string(),
  model: z.string(),
  size_class: z.string().nullable(),
  rank: rank.nullable(),
  rank_absent: textRef.nullable(),
  rank_by_emitted: rank.nullable(),
  rank_by_emitted_absent: textRef.nullable(),
});
type RankedRow = z.output<typeof ranked>;

const panel = z.looseObject({
  ...ranked.shape,
  prices: z.array(
    z.looseObject({
      date: z.string(),
      list: z.number().optional(),
      paid: z.number().optional(),
      currency: z.string(),
    }),
  ),
  figures: figures.optional(),
  sessions: z.array(session),
});

/** What is looked at of a published `panels.json`; whatever else it holds is left alone. */
const file = z.looseObject({
  built_for: z.string(),
  currency: z.string(),
  columns: z.looseObject({ figures: z.array(z.string()) }),
  metrics: z.record(z.string(), kind),
  panels: z.array(panel),
  lists: z.looseObject({ figures: z.array(z.array(z.string())) }).optional(),
  texts: z.array(z.string()),
});

const ranksFile = z.looseObject({ built_for: z.string(), panels: z.array(ranked), texts: z.array(z.string()) });

type File = z.output<typeof file>;
type Panel = File['panels'][number];

/**
 * What a published `panels.json` says.
 *
 * @param shownAs how messages call it
 * @throws UsageError where it is none, or one of a form that can't be read
 */
export function stateOfData(text: string, shownAs: string): GuideState {
  return new DataReader(checked(text, shownAs, file)).state();
}

/** What a published `panels.json` says of places alone; far quicker to read than all of it. Refusals as above. */
export function ranksOfData(text: string, shownAs: string): RankedGuide & { builtFor: string } {
  const { built_for: builtFor, panels, texts } = checked(text, shownAs, ranksFile);
  const ranked = panels.map(
    (it): RankedPanel => ({
      ...identityOf(it),
      ranks: {
        optical: rankOf(it.rank, it.rank_absent, { texts, panels }),
        emitted: rankOf(it.rank_by_emitted, it.rank_by_emitted_absent, { texts, panels }),
      },
    }),
  );
  return { builtFor, panels: new Map(ranked.map((it) => [it.slug, it])) };
}

const identityOf = ({ slug, maker, model, size_class: sizeClass }: RankedRow) => ({
  slug,
  name: `${maker} ${model}`,
  sizeClass,
});

function rankOf(
  it: RankedRow['rank'],
  absent: TextRef | null,
  { texts, panels }: { texts: readonly string[]; panels: ReadonlyArray<{ slug: string }> },
): RankState {
  if (!it) return { absent: absent === null ? '' : textOf(absent, texts) };
  const { place, of, range } = it;
  const tiedWith = it.tiedWith.map((one) => (typeof one === 'string' ? one : (panels[one]?.slug ?? '')));
  return { place, of, range, tiedWith };
}

function checked<T>(text: string, shownAs: string, schema: z.ZodType<T>): T {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new UsageError(`${shownAs} is no JSON; wanted the data/panels.json of a built guide.`);
  }
  const format = z.looseObject({ format: z.int(), panels: z.array(z.unknown()) }).safeParse(data).data?.format;
  const readable = listed(READABLE_FORMATS.map(String));
  if (format === undefined) {
    throw new UsageError(`${shownAs} is JSON, but not the data/panels.json of a built guide.`);
  }
  if (!READABLE_FORMATS.includes(format)) {
    throw new UsageError(
      `${shownAs} has the data format ${format}; this version reads format ${readable}. Compare with a revision of the content instead, as in --against HEAD~1.`,
    );
  }
  const parsed = schema.safeParse(data);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  const at = issue?.path.map(String).join('.') ?? '';
  throw new UsageError(
    `${shownAs} says it has the data format ${format}, but ${at} is not as it should be: ${issue?.message}.`,
  );
}

class DataReader {
  private readonly data: File;

  constructor(data: File) {
    this.data = data;
  }

  state(): GuideState {
    const { built_for: builtFor, currency, metrics, panels } = this.data;
    const methods = new Map(Object.values(metrics).map((it) => [it.method, it.method_version]));
    return {
      builtFor,
      currency,
      panels: new Map(panels.map((it) => [it.slug, this.panel(it)])),
      methods,
      knowsAllMethods: false,
      pages: new Set([...[...methods.keys()].map(methodAddress), ...panels.flatMap(({ slug }) => panelPages(slug))]),
      knowsAllPages: false,
      renamed: new Map(),
    };
  }

  private panel(it: Panel): PanelState {
    const { sessions, prices } = it;
    const [price] = prices;
    const never = (): SessionState[] => [
      { date: null, figures: this.figures(it.figures ?? {}), flags: [], claims: [] },
    ];
    return {
      ...identityOf(it),
      price: price && {
        date: price.date,
        list: price.list ?? null,
        paid: price.paid ?? null,
        currency: price.currency,
      },
      ranks: {
        optical: rankOf(it.rank, it.rank_absent, this.data),
        emitted: rankOf(it.rank_by_emitted, it.rank_by_emitted_absent, this.data),
      },
      sessions:
        sessions.length > 0
          ? sessions.map(({ date, figures, flags, claims }) => ({
              date,
              figures: this.figures(figures),
              flags: flags.map(({ check, severity, text, concerns }) => ({
                check,
                severity,
                text: this.text(text),
                concerns,
              })),
              claims: claims.map(({ subject, claimed, unit, outcome, text }) => ({
                subject: this.text(subject),
                claimed,
                unit,
                outcome,
                text: this.text(text),
              })),
            }))
          : never(),
    };
  }

  private figures(rows: z.output<typeof figures>): Map<string, FigureState> {
    if (!Array.isArray(rows))
      return new Map(Object.entries(rows).map(([metric, row]) => [metric, this.figure(row, metric)]));
    const [place, ...own] = rows;
    const metrics = this.data.lists?.figures[place] ?? [];
    return new Map(own.map((row, i) => [metrics[i] ?? '', this.figure(row, metrics[i] ?? '')]));
  }

  private figure(row: z.output<typeof figure>, metric: string): FigureState {
    if (!Array.isArray(row)) return { reason: this.text(row.reason) };
    const [value, uncertainty, low, high, otherwise] = row;
    const it = { ...this.data.metrics[metric], ...otherwise };
    return {
      value,
      uncertainty,
      interval95: low === null || high === null ? null : [low, high],
      unit: it.unit ?? '',
      bound: it.bound ?? null,
      basis: it.basis ?? 'derived',
      method: it.method ?? '',
      version: it.method_version ?? 0,
    };
  }

  private text(ref: TextRef): string {
    return textOf(ref, this.data.texts);
  }
}
