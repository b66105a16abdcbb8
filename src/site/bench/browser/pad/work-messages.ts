/** What the page and the thread that works out figures say to each other. No DOM. */
import type { BenchPanelFile, BenchSetup } from '../bench-data.ts';
import type { Run } from '../run.ts';
import type { WorkedRun } from '../worked-run.ts';

/** The panel's file as far as the page has it. */
export interface KnownFile {
  /** Byte by byte, from the tester's disk; undefined for a new panel, or where it is not at hand. */
  text?: string | undefined;
  /** In its place for the figures alone: the guide's data of it. */
  data?: BenchPanelFile | undefined;
}

/** To the thread: the guide's bench first, then runs. */
export type ToThread =
  | { readonly setup: BenchSetup }
  | { readonly run: Run; readonly known: KnownFile; readonly number: number };

/** The content file of a run, or why there is none. */
export type MadeFile =
  | { name: string; text: string }
  | { name: string; fault: string; code: 'no file' | 'session there' | 'other' };

export interface FromThread {
  readonly number: number;
  readonly worked: WorkedRun | { readonly fault: string };
  readonly file: MadeFile;
}
