/**
 * Reads `data/panels.json` back into its full form, by what the README says of it: every figure with its unit, basis,
 * method and id, every text in full.
 */

type Ref = number | [number, ...string[]];
type Row = readonly unknown[];
interface Kind {
  unit: string;
  basis: string;
  method: string;
  method_version: number;
  of?: 'panel' | 'session';
}
type FigureRow = [number, number | null, number | null, number | null, Record<string, unknown>?] | { reason: Ref };

// biome-ignore lint/suspicious/noExplicitAny: the file as it stands, before anything is known of it
type Raw = any;

/** The file with everything in its place. */
export function expandPanels(file: Raw): Raw {
  const { columns, metrics, step_up_metrics, limits, instruments, lists, texts, panels, ...head } = file;
  const text = (ref: Ref): string => {
    if (typeof ref === 'number') return texts[ref];
    const [place, ...numbers] = ref;
    return texts[place].replace(/#/g, () => numbers.shift());
  };
  const named = (row: Row, list: string) =>
    Object.fromEntries(row.map((it, i) => [columns[list][i], it])) as Record<string, Raw>;

  const figure = (row: FigureRow, id: string, kind: Kind, lists: Ref[][]) => {
    if (!Array.isArray(row)) return { value: null, reason: text(row.reason) };
    const { more, value, standard_uncertainty, interval95_low: low, interval95_high: high } = named(row, 'figures');
    const { notes, uncertainty_absent: absent, ...rest } = more ?? {};
    return {
      id,
      value,
      standard_uncertainty,
      interval95: low === null ? null : [low, high],
      unit: kind.unit,
      basis: kind.basis,
      method: kind.method,
      method_version: kind.method_version,
      ...rest,
      ...(absent !== undefined && { uncertainty_absent: text(absent) }),
      ...(notes !== undefined && { notes: (lists[notes] as Ref[]).map(text) }),
    };
  };
  /** Rows with what each is of. */
  const listed = <T>([place, ...rows]: [number, ...T[]], name: string): Array<[entry: Raw, row: T]> =>
    rows.map((row, i) => [lists[name][place][i], row]);

  const figures = (rows: [number, ...FigureRow[]], { slug, notes }: Raw, date?: string) =>
    Object.fromEntries(
      listed(rows, 'figures').map(([metric, row]) => {
        const kind: Kind = metrics[metric];
        const owner = date === undefined || kind.of === 'panel' ? slug : `${slug}/${date}`;
        return [metric, figure(row, `${owner}/${metric}`, kind, notes)];
      }),
    );

  const session = (it: Raw, of: Raw) => ({
    ...it,
    instruments: Object.fromEntries(
      Object.entries(lists.instruments[it.instruments] as Record<string, [string, string | null, string?]>).map(
        ([kind, row]) => {
          const [id, calibration, read_on] = row;
          const said = calibration === null ? undefined : instruments[id][calibration];
          const { holds_until = null, uncertainty = null } = said ?? {};
          return [kind, { id, calibration, holds_until, uncertainty, ...(read_on && { read_on }) }];
        },
      ),
    ),
    figures: figures(it.figures, of, it.date),
    readings: listed<Raw>(it.readings, 'readings').map(([entry, row]) => {
      const { label, unit, ...rest } = named(entry, 'readings');
      const [value, written, more] = Array.isArray(row) ? row : [row, null];
      const given = { ...(value !== null && { value }), ...(unit !== null && { unit }) };
      return { ...rest, label: text(label), written: written ?? `${value} ${unit}`, ...given, ...more };
    }),
    limits: listed<Ref | null>(it.limits, 'limits').map(([entry, finding]) => {
      const { title, background, limit, caution, ...rest } = named(entry, 'limits');
      return {
        ...rest,
        title: text(title),
        sentence: [finding, background].flatMap((ref: Ref | null) => (ref === null ? [] : [text(ref)])).join(' '),
        limit: limit === null ? null : limits[limit],
        caution: text(caution),
      };
    }),
    flags: it.flags.map((flag: Raw) => ({ ...flag, text: text(flag.text) })),
    claims: it.claims.map((claim: Raw) => ({ ...claim, subject: text(claim.subject), text: text(claim.text) })),
  });

  const nameOf = (place: number) => panels[place].slug;
  const rank = (it: Raw, slug: string) => it && { panel: slug, ...it, tiedWith: it.tiedWith.map(nameOf) };
  return {
    ...head,
    panels: panels.map(({ notes, ...it }: Raw) => ({
      ...it,
      rank: rank(it.rank, it.slug),
      rank_by_emitted: rank(it.rank_by_emitted, it.slug),
      rank_absent: it.rank_absent === null ? null : text(it.rank_absent),
      rank_by_emitted_absent: it.rank_by_emitted_absent === null ? null : text(it.rank_by_emitted_absent),
      step_ups: it.step_ups.map((row: Row) => {
        const { panel, extra_price, extra_power: power, extra_price_per_watt: perWatt } = named(row, 'step_ups');
        const id = `${it.slug}/step-up/${panel}`;
        return {
          panel,
          extra_price,
          extra_power: figure(power, `${id}/power`, step_up_metrics.power, notes),
          extra_price_per_watt:
            perWatt && figure(perWatt, `${id}/price-per-watt`, step_up_metrics['price-per-watt'], notes),
        };
      }),
      ...(it.figures && { figures: figures(it.figures, { ...it, notes }) }),
      sessions: it.sessions.map((own: Raw) => session(own, { ...it, notes })),
    })),
  };
}
