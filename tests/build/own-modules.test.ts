import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ownModules } from '../../src/build/own-modules.ts';
import { productFolder } from '../../src/content/read/product-folder.ts';

const { resolveId } = ownModules('/guide/src') as unknown as {
  resolveId: { filter: { id: RegExp }; handler(id: string, importer?: string): unknown };
};
const resolved = (id: string, importer?: string) =>
  resolveId.filter.id.test(id) ? resolveId.handler(id, importer) : null;

test('modules of the product stay where they are, whoever asks for them', () => {
  const module = { id: 'file:///guide/src/words/format.ts', external: true };
  expect(resolved('../words/format.ts', '/guide/src/pages/index.astro')).toEqual(module);
  expect(resolved('../words/format.ts', '/guide/src/pages/index.astro?astro&type=script&lang.ts')).toEqual(module);
});

test('all else is bundled', () => {
  expect(resolved('./Row.astro', '/guide/src/pages/index.astro')).toBeNull();
  expect(resolved('astro:content', '/guide/src/pages/index.astro')).toBeNull();
  expect(resolved('../../../src-of-mine/a.ts', '/guide/src/pages/index.astro')).toBeNull();
  expect(resolved('./entry.ts')).toBeNull();
});

// Node loads them as they are: what only a bundler understands would fail there, or be lost.
test('no module of the product needs a bundler', () => {
  const modules = globSync('src/**/*.ts', { cwd: productFolder(), exclude: ['src/env.d.ts', 'src/content.config.ts'] });
  expect(modules.length).toBeGreaterThan(300);
  const bundled = modules.filter((it) =>
    /from '(?:astro:|[^']+\.(?:astro|css|mdx)')|import '[^']+\.css'|import\.meta\.(?:glob|env\.)/.test(
      readFileSync(join(productFolder(), it), 'utf8'),
    ),
  );
  expect(bundled).toEqual([]);
});
