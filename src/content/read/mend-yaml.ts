import { type Edit, editsOf, indentOf, withoutTabs } from './yaml-edits.ts';

/** A slip of the hand that was found by mending it. */
export interface Slip {
  /** From 1. */
  line: number;
  /** The line as it stands. */
  found: string;
  hint: string;
}

/** How a text is read: what is wrong with it, and how many values it holds. */
export interface Judged {
  /** What is wrong, without the places: they move with a mended line. */
  faults: readonly string[];
  values: number;
}

export interface Suspect {
  /** YAML. */
  text: string;
  /** Lines, from 1, near which something is wrong, the first first. */
  lines: readonly number[];
  /** Undefined where the text can't be read as YAML. */
  judged: Judged | undefined;
}

export interface Mended {
  text: string;
  slip: Slip;
  /** Faults that are left. */
  left: number;
}

/** Lines around a fault that are looked at, before and after it. */
const [BEFORE, AFTER] = [3, 1];
/** Faults around which lines are looked at: enough for the start of an avalanche. */
const MOST_FAULTS = 6;

/**
 * Looks for the one line that, mended, takes the most faults away: a space too many at its start, a missing dash or
 * bracket, a tab. One slip in YAML may be read as dozens of faults elsewhere; the one that explains them is what
 * the tester has to know. A mended text keeps its lines, so that what is still wrong with it stands where it stood.
 *
 * @returns undefined where no line explains anything
 */
export function mendYaml(suspect: Suspect, judge: (text: string) => Judged | undefined): Mended | undefined {
  const lines = suspect.text.split('\n');
  const tabs = withoutTabs(lines);
  let best: (Mended & { values: number; cost: number }) | undefined;

  const tryOut = (at: number, edit: Edit, text: string, distance: number) => {
    const judged = judge(text);
    if (!judged || !isBetter(judged, suspect.judged)) return;
    const cost = edit.cost + distance;
    const faults = judged.faults.length;
    const isBest =
      !best ||
      faults < best.left ||
      (faults === best.left && (judged.values > best.values || (judged.values === best.values && cost < best.cost)));
    if (!isBest) return;
    best = {
      text,
      slip: { line: at + 1, found: shownLine(lines[at] ?? ''), hint: edit.hint },
      ...{ left: faults, values: judged.values, cost },
    };
  };

  for (const { at, edit, lines: put } of tabs) tryOut(at, edit, put.join('\n'), 0);
  for (const [at, distance] of linesNear(suspect.lines, lines)) {
    for (const edit of editsOf(lines, at)) tryOut(at, edit, lines.with(at, edit.line).join('\n'), distance);
  }
  return best && { text: best.text, slip: best.slip, left: best.left };
}

/** Fewer faults, none of them new, and no value lost: a line that has become part of a text is no cure. */
function isBetter(now: Judged, before: Judged | undefined): boolean {
  if (!before) return true;
  if (now.faults.length >= before.faults.length || now.values < before.values) return false;
  return now.faults.every((it) => before.faults.includes(it));
}

/**
 * Indexes of the lines around faults and of the first line of their block, each with its distance from the nearest
 * fault; blank lines and comments are none.
 */
function linesNear(faults: readonly number[], lines: readonly string[]): Map<number, number> {
  const near = new Map<number, number>();
  for (const line of [...new Set(faults)].slice(0, MOST_FAULTS)) {
    const own = indentOf(lines[line - 1] ?? '') ?? 0;
    const parent = lines.slice(0, line - 1).findLastIndex((it) => (indentOf(it) ?? own) < own);
    if (parent >= 0 && indentOf(lines[parent + 1] ?? '') !== undefined) near.set(parent + 1, BEFORE);
    for (const [step, reach] of [
      [-1, BEFORE],
      [1, AFTER],
    ] as const) {
      let left = reach + (step < 0 ? 1 : 0);
      for (let at = line - (step < 0 ? 1 : 0); at >= 0 && at < lines.length && left > 0; at += step) {
        if (indentOf(lines[at] ?? '') === undefined) continue;
        left--;
        near.set(at, Math.min(near.get(at) ?? Number.POSITIVE_INFINITY, Math.abs(at - (line - 1))));
      }
    }
  }
  return near;
}

function shownLine(line: string): string {
  return `"${line.trim().slice(0, 80)}"`;
}
