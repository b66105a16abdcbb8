import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Golden, parseGolden } from './golden.ts';

/** The file itself: its first line is the version of the method of uncertainty, then panels and figures. */
export const GOLDEN_FILE = fileURLToPath(new URL('figures.jsonl', import.meta.url));

/** The golden file; an empty guide where there is none yet. */
export function readGolden(): { golden: Golden; budgetVersion: number } {
  if (!existsSync(GOLDEN_FILE)) return { golden: { panels: new Map(), figures: new Map() }, budgetVersion: 0 };
  const text = readFileSync(GOLDEN_FILE, 'utf8');
  const end = text.indexOf('\n');
  const [name, version] = JSON.parse(text.slice(0, end));
  if (name !== 'budgets') throw new Error(`${GOLDEN_FILE} does not start with the version of budgets`);
  return { golden: parseGolden(text.slice(end + 1)), budgetVersion: version };
}
