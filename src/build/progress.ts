import { clearLine, cursorTo } from 'node:readline';
import type { WriteStream } from 'node:tty';

/** ms; a build that is done sooner shows no stages. */
const QUIET = 3000;
/** ms between two lines, so that the terminal is not kept busy with counting. */
const SELDOM = 100;

/** What a stage is told on: a terminal's one line, renewed. */
type Terminal = Pick<WriteStream, 'isTTY' | 'columns' | 'write'>;

interface Progress {
  terminal: Terminal;
  started: number;
  last: number;
  /** The line that stands there. */
  isShown: boolean;
}

/** On the global object, as the ledger is: the command and Astro's hooks may be two copies of this module. */
const shared = globalThis as { panelLedgerProgress?: Progress | undefined };

/** From here on stages are told, if it is to a terminal. */
export function startProgress(terminal: Terminal = process.stderr): void {
  if (terminal.isTTY) shared.panelLedgerProgress = { terminal, started: performance.now(), last: 0, isShown: false };
}

/**
 * Tells at what the build is, in one line that takes the place of the one before; nothing where nobody watches, or
 * within its first seconds.
 *
 * @param isLong nothing else can be told until it is over: said at once
 */
export function tellStage(text: string, isLong = false): void {
  const progress = shared.panelLedgerProgress;
  if (!progress) return;
  const now = performance.now();
  if (!isLong && (now - progress.started < QUIET || now - progress.last < SELDOM)) return;
  progress.last = now;
  renew(progress, text);
}

/** Takes the line away, for what is printed next. */
export function clearStage(): void {
  const progress = shared.panelLedgerProgress;
  if (progress?.isShown) renew(progress, '');
}

/** The build has ended. */
export function endProgress(): void {
  clearStage();
  shared.panelLedgerProgress = undefined;
}

function renew(progress: Progress, text: string): void {
  const { terminal } = progress;
  clearLine(terminal as WriteStream, 0);
  cursorTo(terminal as WriteStream, 0);
  // A longer line would break, and stay.
  if (text !== '') terminal.write(text.slice(0, (terminal.columns || 80) - 1));
  progress.isShown = text !== '';
}
