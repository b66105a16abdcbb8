import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { FALLBACKS, fontFallbacks } from '../support/font-fallbacks.ts';

const text = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

test('the faces that stand in have the measures of the typefaces that are installed', async () => {
  const found = readFileSync(FALLBACKS, 'utf8');
  expect(found, 'write it anew: npx node tests/support/font-fallbacks.ts').toBe(await fontFallbacks());
  expect(found.match(/@font-face/g)).toHaveLength(9);
});

test('every family that a style sheet names has its face', () => {
  const faces = text('src/styles/fonts.css') + text('src/styles/font-fallbacks.css');
  const families = [...text('src/styles/tokens.css').matchAll(/--(?:sans|serif): ([^;]+);/g)].flatMap((it) =>
    [...(it[1] ?? '').matchAll(/"([^"]+)"/g)].map((quoted) => quoted[1]),
  );
  expect(families).toHaveLength(8);
  for (const family of families) expect(faces).toContain(`font-family: "${family}";`);
});

test.each([
  ['source-sans-3', '@fontsource-variable/source-sans-3'],
  ['source-serif-4', '@fontsource/source-serif-4'],
])('the licence of %s goes along with it', (name, folder) => {
  const published = text(`public/licences/${name}.txt`);
  // The package names no holder of the rights; the typeface's own file does.
  const terms = (it: string) => it.slice(it.indexOf('This Font Software is licensed'));
  expect(published).toMatch(/^© .* Adobe .*Reserved Font Name/);
  expect(terms(published)).toBe(terms(text(`node_modules/${folder}/LICENSE`)));
  expect(terms(published)).toContain('SIL OPEN FONT LICENSE Version 1.1');
});
