/** The editions of the product's texts, and the golden marks of what each of them says. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { textMark } from '../../src/content/migrations/text-mark.ts';
import { textsFolder } from '../../src/content/read/product-texts.ts';

export type Editions = Record<string, { edition: number; mark: string }>;

export const EDITIONS_FILE = fileURLToPath(new URL('../golden/editions.json', import.meta.url));

export const goldenEditions = (): Editions => JSON.parse(readFileSync(EDITIONS_FILE, 'utf8'));

/** By their paths among the texts. */
export function presentEditions(): Editions {
  const paths = globSync('**/*.mdx', { cwd: textsFolder() }).toSorted();
  return Object.fromEntries(
    paths.map((path) => {
      const text = readFileSync(join(textsFolder(), path), 'utf8');
      return [path, { edition: Number(/^edition: (\d+)$/m.exec(text)?.[1]), mark: textMark(text) }];
    }),
  );
}

/** One text a line. */
export function format(editions: Editions): string {
  const lines = Object.entries(editions).map(
    ([path, { edition, mark }]) => `  ${JSON.stringify(path)}: { "edition": ${edition}, "mark": "${mark}" }`,
  );
  return `{\n${lines.join(',\n')}\n}\n`;
}
