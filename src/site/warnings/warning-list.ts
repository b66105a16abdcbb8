import { counted } from '../../content/read/problem-list.ts';
import type { Problem } from '../../content/schema/problem.ts';
import type { Flag } from '../../measure/figure.ts';
import { METRICS } from '../../measure/metrics.ts';
import type { Warning } from './warning.ts';
import { SEVERITIES } from './warnings.ts';

/** More names of figures than these say less. */
const MOST_FIGURES = 3;

/**
 * Warnings as one readable list, a block each: weight and place, what is odd, the figures it reaches, what to write
 * instead. What one check says of several figures at one place is one block: one slip makes all efficiencies impossible.
 *
 * @example
 * doubt  content/panels/tern-300/index.md:41  sessions[0].warmUp
 *   odd      The panel was on for 20 s before the first reading; …
 *   figures  Peak irradiance, red and near-infrared; Mean irradiance; …
 *   hint     a bare number is in seconds: if minutes were meant, write `20 min`
 */
export function warningList(warnings: readonly Warning[]): string {
  const alike = Map.groupBy(warnings, (it) => [it.severity, it.check, it.file, it.field].join('\n'));
  return [...alike.values()]
    .flatMap((group) => {
      const [first, ...more] = group;
      return first ? [{ ...first, more: more.length, figures: [...new Set(group.flatMap((it) => it.figures))] }] : [];
    })
    .map((it) =>
      [
        `${it.severity}  ${it.file}:${it.line}${it.field && `  ${it.field}`}`,
        `  ${it.check === 'to-fill-in' ? 'to do' : 'odd  '}    ${it.text}${it.more > 0 ? ` And ${it.more} more like it.` : ''}`,
        // A note's sentence names what it is of; there may be many of them.
        ...(it.figures.length > 0 && it.severity !== 'note' ? [`  figures  ${figureNames(it.figures)}`] : []),
        ...(it.hint ? [`  hint     ${it.hint}`] : []),
      ].join('\n'),
    )
    .join('\n\n');
}

function figureNames(metrics: readonly string[]): string {
  const names = metrics.slice(0, MOST_FIGURES).map((id) => METRICS.find((it) => it.id === id)?.name ?? id);
  const more = metrics.length - names.length;
  return [...names, ...(more > 0 ? [`and ${more} more`] : [])].join('; ');
}

const WORDS: Record<Flag['severity'], (n: number) => string> = {
  impossible: (n) => `${n} impossible`,
  doubt: (n) => `${n} doubtful`,
  note: (n) => counted(n, 'note'),
};

/** `0 problems, 3 warnings: 1 impossible, 2 doubtful`. */
export function warningCount(warnings: readonly Warning[]): string {
  const parts = SEVERITIES.flatMap((severity) => {
    const n = warnings.filter((it) => it.severity === severity).length;
    return n > 0 ? [WORDS[severity](n)] : [];
  });
  const total = `0 problems, ${counted(warnings.length, 'warning')}`;
  return parts.length > 0 ? `${total}: ${parts.join(', ')}` : total;
}

/** True where something can't be right as it stands. */
export function hasImpossible(warnings: readonly Warning[]): boolean {
  return warnings.some((it) => it.severity === 'impossible');
}

/** One entry of `check --json`; every key is always there. */
export interface JsonFinding {
  severity: 'problem' | Flag['severity'];
  file: string;
  /** Null where the whole file is concerned. */
  line: number | null;
  /** Empty where the whole file is concerned. */
  field: string;
  /** Null for a problem. */
  check: string | null;
  /** What is odd; for a problem, what was found. */
  found: string;
  /** What should stand there; null for a warning. */
  wanted: string | null;
  hint: string | null;
  /** Metric ids of the figures concerned. */
  figures: readonly string[];
}

/** A problem as `check --json` gives it. */
export function problemJson({ file, line, field, found, wanted, hint }: Problem): JsonFinding {
  return {
    severity: 'problem',
    file,
    line: line ?? null,
    field,
    check: null,
    found,
    wanted,
    hint: hint ?? null,
    figures: [],
  };
}

/** A warning as `check --json` gives it. */
export function warningJson({ severity, check, file, line, field, text, hint, figures }: Warning): JsonFinding {
  return { severity, file, line, field, check, found: text, wanted: null, hint: hint ?? null, figures };
}
