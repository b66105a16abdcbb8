/** The demo content and its ledger, as tests of pages and files look at them. */

import type { Content } from '../../src/content/read/content.ts';
import { readContent } from '../../src/content/read/read-content.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { Ledger, PanelEntry } from '../../src/ledger/ledger.ts';
import { keepResults } from '../../src/ledger/result-store.ts';
import { TODAY } from './content-folder.ts';
import { DEMO_FOLDER } from './demo-folder.ts';
import { frozen } from './frozen.ts';

export interface Demo {
  content: Content;
  ledger: Ledger;
  /** Throws where there is no such panel. */
  panel(slug: string): PanelEntry;
}

/** Those that this worker has, by the panel that is withheld in them. */
const known = new Map<string | undefined, Demo>();

/**
 * The one that all test files of a worker share, since it takes most of a second to put together. Frozen, so that no file
 * can change what the next one sees.
 *
 * @param withheld a panel whose top left reading is made so high that no beam explains its grid
 * @throws where the demo content has a problem
 */
export function demoLedger(withheld?: string): Demo {
  const demo = known.get(withheld) ?? frozen(freshDemo(withheld));
  known.set(withheld, demo);
  return demo;
}

/** One of the test's own, put together anew; see `demoLedger`. */
export function freshDemo(withheld?: string): Demo {
  const { content, problems } = readContent({ folder: DEMO_FOLDER, today: TODAY });
  if (!content) throw new Error(JSON.stringify(problems, null, 1));
  const corner = withheld === undefined ? undefined : firstReading(content, withheld);
  if (corner) corner.value *= 3;
  const ledger = buildLedger(content, { today: TODAY });
  // So that the next test file need not work out the same panels' light again.
  keepResults();
  return {
    content,
    ledger,
    panel(slug) {
      const panel = ledger.panels.get(slug);
      if (!panel) throw new Error(`the demo has no panel ${slug}`);
      return panel;
    },
  };
}

function firstReading(content: Content, slug: string): { value: number } {
  for (const { grid } of content.panels.get(slug)?.data.sessions ?? []) {
    const point = grid?.rows[0]?.[0];
    const first = Array.isArray(point) ? point[0] : point;
    if (first) return 'struck' in first ? first.value : first;
  }
  throw new Error(`the demo has no grid of ${slug}`);
}

/** Every text within a value, with its path; for tests of what no text may say. */
export function* textsIn(value: unknown, path = ''): Generator<[path: string, text: string]> {
  if (typeof value === 'string') yield [path, value];
  else if (value instanceof Map) for (const [key, inner] of value) yield* textsIn(inner, `${path}.${key}`);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, inner] of Object.entries(value)) yield* textsIn(inner, path ? `${path}.${key}` : key);
  }
}
