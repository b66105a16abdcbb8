import type { Source } from '../../content/read/source.ts';
import { fieldPath } from '../../content/schema/problem.ts';
import type { Flag } from '../../measure/figure.ts';

/** Something odd that does not stop a build: it may be true, and the tester has to look. */
export interface Warning {
  severity: Flag['severity'];
  /** The check that found it. */
  check: string;
  /** Path from the repository's top. */
  file: string;
  /** Counted from 1. */
  line: number;
  /** `sessions[0].warmUp`. */
  field: string;
  /** What is odd: whole sentences with the numbers in them. */
  text: string;
  /** What to write instead. */
  hint?: string;
  /** Metric ids of the figures it concerns; empty where it is about the file alone. */
  figures: readonly string[];
}

/** A warning about one field of a file. */
export function warningAt(
  source: Source,
  path: readonly PropertyKey[],
  about: Omit<Warning, 'file' | 'line' | 'field' | 'figures'> & { figures?: readonly string[] },
): Warning {
  return {
    figures: [],
    ...about,
    file: source.file,
    line: source.lineOf(path),
    field: fieldPath(source.unfinished?.asWritten(path) ?? path),
  };
}
