/**
 * A run: one session while it is being taken, as the acts of the tester one after another. Nothing here reads a clock or
 * touches the page; whoever enters says when.
 */

/** Which of the guide's panels, or which new one, a run is of. */
export interface RunPanel {
  /** Name of its folder. */
  readonly slug: string;
  /** True where the guide has no file of it yet. */
  readonly isNew: boolean;
  /** Name of the maker's file. */
  readonly maker: string;
  readonly model: string;
}

/** One reading, or one thing that was measured once, such as the width of the field. */
export interface Entry {
  /** Counts from 1 in the order of entering; another one of the same place has its own. */
  readonly id: number;
  /**
   * Where it goes, as the content's field paths say it within a session: `grid.rows[1][0]`, `peak.red`, `beyond[2].on`,
   * `distances[1].centre`, `mains.combined`, `magnetic.off`, `warmUp`. `field.width` and `field.height` are the panel's.
   * A repeat is a further entry with the same path.
   */
  readonly path: string;
  /** As the meter shows it, with its unit where that is not the field's own: `41 mW/cm2`, `<0.1`. */
  readonly written: string;
  /** When, as ISO 8601. */
  readonly at: string;
  /** Why it does not count. */
  readonly struck?: string;
  /** Why it counts although it looks odd. */
  readonly accepted?: string;
}

export interface RunGrid {
  readonly rows: number;
  readonly columns: number;
  /** `1 in` */
  readonly inset: string;
}

export interface RunPhoto {
  /** Its name beside the content file. */
  readonly file: string;
  readonly shows: string;
  /** Whose picture it is. */
  readonly by?: string;
}

export interface Run {
  readonly id: string;
  readonly panel: RunPanel;
  /** Day of the session, `YYYY-MM-DD`. */
  readonly date: string;
  readonly methodVersion: number;
  /** File name of the meter by what it reads: `irradiance` to `bench-thermopile`. */
  readonly instruments: Readonly<Record<string, string>>;
  readonly grid: RunGrid;
  /** What is set before it is read, by its path: `distance`, `beyond[0].edge`, `beyond[0].past`, `distances[1].distance`, `sound.distance`. */
  readonly settings: Readonly<Record<string, string>>;
  /** Blocks that are not read again, each with the day of the session that has them. */
  readonly carried: Readonly<Record<string, string>>;
  readonly entries: readonly Entry[];
  /** What is said in words, by field: `notes`, `hotSpots`. */
  readonly texts: Readonly<Record<string, string>>;
  readonly photos: readonly RunPhoto[];
  /** The tester has said that all is read: its session is no draft any more. */
  readonly isFinished: boolean;
}

/** What the tester does. */
export type Act =
  | { readonly kind: 'enter'; readonly path: string; readonly written: string; readonly at: string }
  | { readonly kind: 'strike'; readonly id: number; readonly reason: string }
  | { readonly kind: 'unstrike'; readonly id: number }
  /** Typed or read wrongly: the entry is struck with the reason, and a new one follows it at its place. */
  | {
      readonly kind: 'correct';
      readonly id: number;
      readonly written: string;
      readonly reason: string;
      readonly at: string;
    }
  /** It looks odd, and counts all the same. */
  | { readonly kind: 'accept'; readonly id: number; readonly reason: string }
  | { readonly kind: 'set'; readonly field: 'date'; readonly value: string }
  | { readonly kind: 'set'; readonly field: 'grid'; readonly value: RunGrid }
  | { readonly kind: 'set'; readonly field: 'finished'; readonly value: boolean }
  /** An empty value takes it away. */
  | {
      readonly kind: 'set';
      readonly field: 'instruments' | 'settings' | 'carried' | 'texts';
      readonly key: string;
      readonly value: string;
    }
  | { readonly kind: 'set'; readonly field: 'panel'; readonly value: RunPanel }
  | { readonly kind: 'photo'; readonly file: string; readonly shows: string }
  | { readonly kind: 'unphoto'; readonly file: string };

/** A run as it came about. Undoing and redoing move acts from one list to the other. */
export interface RunLog {
  /** What the run was before the first act. */
  readonly start: Run;
  readonly acts: readonly Act[];
  /** The one that was undone last comes last. */
  readonly undone: readonly Act[];
}

/** A log with nothing done yet. */
export const newLog = (start: Run): RunLog => ({ start, acts: [], undone: [] });

/** Does something; what was undone before it can't be redone any more. */
export const doAct = ({ start, acts }: RunLog, act: Act): RunLog => ({ start, acts: [...acts, act], undone: [] });

/** Takes the last act back; the same log where there is none. */
export function undo(log: RunLog): RunLog {
  const last = log.acts.at(-1);
  return last ? { ...log, acts: log.acts.slice(0, -1), undone: [...log.undone, last] } : log;
}

/** Does again what was undone last; the same log where nothing was. */
export function redo(log: RunLog): RunLog {
  const last = log.undone.at(-1);
  return last ? { ...log, acts: [...log.acts, last], undone: log.undone.slice(0, -1) } : log;
}

/** What the acts have come to. An act on an entry that is not there changes nothing. */
export const runOf = ({ start, acts }: RunLog): Run => acts.reduce(acted, start);

function acted(run: Run, act: Act): Run {
  const changed = (id: number, change: (entry: Entry) => Entry): Run => ({
    ...run,
    entries: run.entries.map((it) => (it.id === id ? change(it) : it)),
  });
  switch (act.kind) {
    case 'enter':
      return { ...run, entries: [...run.entries, entryOf(run, act)] };
    case 'strike':
      return changed(act.id, ({ accepted: _, ...it }) => ({ ...it, struck: act.reason }));
    case 'unstrike':
      return changed(act.id, ({ struck: _, ...it }) => it);
    case 'accept':
      return changed(act.id, ({ struck: _, ...it }) => ({ ...it, accepted: act.reason }));
    case 'correct':
      return {
        ...run,
        entries: run.entries.flatMap(({ accepted, ...it }) =>
          it.id === act.id
            ? [{ ...it, struck: act.reason }, entryOf(run, { path: it.path, written: act.written, at: act.at })]
            : [accepted === undefined ? it : { ...it, accepted }],
        ),
      };
    case 'photo':
      return {
        ...run,
        photos: [...run.photos.filter((it) => it.file !== act.file), { file: act.file, shows: act.shows }],
      };
    case 'unphoto':
      return { ...run, photos: run.photos.filter((it) => it.file !== act.file) };
    case 'set':
      return withSetting(run, act);
  }
}

function entryOf(run: Run, { path, written, at }: { path: string; written: string; at: string }): Entry {
  const id = 1 + Math.max(0, ...run.entries.map((it) => it.id));
  return { id, path, written: written.trim(), at };
}

function withSetting(run: Run, act: Act & { kind: 'set' }): Run {
  switch (act.field) {
    case 'date':
      return { ...run, date: act.value };
    case 'grid':
      return { ...run, grid: act.value };
    case 'panel':
      return { ...run, panel: act.value };
    case 'finished':
      return { ...run, isFinished: act.value };
    default: {
      const { [act.key]: _, ...rest } = run[act.field];
      return { ...run, [act.field]: act.value.trim() === '' ? rest : { ...rest, [act.key]: act.value } };
    }
  }
}

/** The entries of a place that count, in their order. */
export const counting = ({ entries }: Pick<Run, 'entries'>, path: string): Entry[] =>
  entries.filter((it) => it.path === path && it.struck === undefined);
