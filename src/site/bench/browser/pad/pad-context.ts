/** What the parts of the pad share while a run is open. */
import type { BenchPanelFile } from '../bench-data.ts';
import type { BenchStore } from '../bench-store.ts';
import { type Act, counting, type Run } from '../run.ts';
import type { SheetGrid } from '../sheet-setup.ts';
import type { WorkedRun } from '../worked-run.ts';
import type { Desk } from './desk.ts';
import { choice, choose } from './kept-choices.ts';
import type { PadSetup } from './pad-setup.ts';
import { gridOf, type Place, placesOf } from './places.ts';
import { storeWords } from './store-words.ts';
import { usualUnit } from './typed.ts';

/** A part of the pad, which draws itself anew after each change. */
export type Part = () => void;

export interface Pad {
  readonly setup: PadSetup;
  readonly store: BenchStore;
  readonly desk: Desk;
  /** The guide's data of the panel, where it is not new and they are at hand. */
  readonly data: BenchPanelFile | undefined;
  readonly run: Run;
  readonly grid: SheetGrid;
  readonly places: readonly Place[];
  /** Index of the place that is read now. */
  readonly at: number;
  /** What the build would make of the run; undefined until it is worked out. */
  worked: WorkedRun | undefined;
  /** Readings that are wanted at each point of the grid. */
  rounds: number;
  /** Goes to a place. */
  go(at: number): void;
  /** Does something. Where it can't be written it is told at the top of the page, and thrown. */
  perform(...acts: readonly Act[]): Promise<void>;
  /** Enters what a session has one of: what was there before is struck as read again. */
  enterOnce(path: string, written: string): Promise<void>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  /** Tells at the top of the page where something could not be written, and throws then. */
  guard<T>(work: Promise<T>): Promise<T>;
  /** Tells something at the top of the page; an empty text when all is well again. */
  alarm(text: string): void;
  /** Draws every part. */
  show(): void;
  /** Takes a part in, and draws it. */
  add(part: Part): void;
  /** The unit that the meter of a place shows. */
  unitOf(place: Pick<Place, 'quantity'>): string;
}

/** Unit choices are kept by quantity: a meter shows all its readings in one. */
const unitKey = ({ quantity }: Pick<Place, 'quantity'>) => `unit.${quantity}`;

export const chooseUnit = (place: Place, unit: string): void =>
  choose(unitKey(place), unit === usualUnit(place) ? undefined : unit);

/** What a pad is made of. */
export type PadParts = Pick<Pad, 'setup' | 'store' | 'desk' | 'data' | 'alarm'>;

export function padOf({ setup, store, desk, data, alarm }: PadParts): Pad {
  const parts: Part[] = [];
  const id = desk.run().id;
  let made = makeOf(setup, desk.run());
  let at = Math.max(
    0,
    made.places.findIndex((it) => it.path === choice(`at.${id}`)),
  );
  const guarded = async <T>(work: Promise<T>): Promise<T> => {
    try {
      const done = await work;
      alarm('');
      return done;
    } catch (error) {
      alarm(storeWords(error));
      pad.show();
      throw error;
    }
  };
  const pad: Pad = {
    setup,
    store,
    desk,
    data,
    guard: guarded,
    alarm,
    get run() {
      return desk.run();
    },
    get grid() {
      return made.grid;
    },
    get places() {
      return made.places;
    },
    get at() {
      return Math.min(at, made.places.length - 1);
    },
    worked: undefined,
    rounds: Number(choice('rounds') ?? 3),
    go(index) {
      at = Math.max(0, Math.min(index, made.places.length - 1));
      choose(`at.${id}`, made.places[at]?.path);
      pad.show();
    },
    perform: (...acts) => guarded(desk.perform(...acts)),
    enterOnce: (path, written) => {
      const before = counting(desk.run(), path).at(-1);
      const at = new Date().toISOString();
      const act: Act = before
        ? { kind: 'correct', id: before.id, written, reason: 'Read again', at }
        : { kind: 'enter', path, written, at };
      return guarded(desk.perform(act));
    },
    undo: () => guarded(desk.undo()),
    redo: () => guarded(desk.redo()),
    show() {
      if (made.run !== desk.run()) {
        const path = made.places[at]?.path;
        made = makeOf(setup, desk.run());
        // Places may have come or gone before the present one.
        const now = made.places.findIndex((it) => it.path === path);
        if (now >= 0) at = now;
      }
      for (const it of parts) it();
    },
    add(part) {
      parts.push(part);
      part();
    },
    unitOf: (place) => choice(unitKey(place)) ?? usualUnit(place),
  };
  return pad;
}

function makeOf(setup: PadSetup, run: Run) {
  const grid = gridOf(run, setup.field(run.panel.slug));
  return { run, grid, places: placesOf(run, grid) };
}
