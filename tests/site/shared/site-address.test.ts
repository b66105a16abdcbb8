/** Addresses of the guide, at the top of its host and below a path. */
import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { siteAddress, sitePath } from '../../../src/site/shared/site-address.ts';

test.each([
  ['https://host.example', '/', 'https://host.example/panels/a/#b'],
  ['https://host.example/', '/', 'https://host.example/panels/a/#b'],
  ['https://host.example:8080/some/path', '/some/path/', 'https://host.example:8080/some/path/panels/a/#b'],
  ['https://host.example/some/path//', '/some/path/', 'https://host.example/some/path/panels/a/#b'],
])('%s', (site, path, address) => {
  expect(sitePath(site)).toBe(path);
  expect(siteAddress('/panels/a/#b', site)).toBe(address);
});

test('nobody puts an address together without the path', () => {
  const files = globSync('src/**/*.{ts,astro}').filter((it) => !it.endsWith('shared/site-address.ts'));
  expect(files.length).toBeGreaterThan(300);
  // `new URL('/data/', guide.site)` begins at the top of the host: siteAddress('/data/', guide.site) does not.
  const faults = files.filter((it) => /new URL\([^;]*?,\s*[\w.]*\bsite\b\)/.test(readFileSync(it, 'utf8')));
  expect(faults).toEqual([]);
});
