/** Files from the bench on the built site: they are there byte for byte, with their hashes, and only where a panel has any. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import { FILES, pageAt, panelFiles, textOf } from './site.ts';

const slugs = panelFiles('published').map((it) => it.slug);
const hasPage = (slug: string) => existsSync(join(DEMO_SITE, 'panels', slug, 'files/index.html'));
const withFiles = slugs.filter(hasPage);

test('three panels of the demonstration have a page of their files, and the others have none', () => {
  expect(withFiles).toEqual(['ostrel-vagg', 'quennick-tope', 'ruddlestone-r150']);
  // A withdrawn panel's page says that it is.
  const laid = FILES.filter((it) => it.includes('/files/') && !it.endsWith('.html'));
  expect(laid.filter((it) => !withFiles.some((slug) => it.includes(slug)))).toEqual([]);
});

test.each(withFiles)('%s: each file can be had as it was, and its hash is its own', (slug) => {
  const rows = pageAt(`/panels/${slug}/files/`).document.querySelectorAll('table.files tbody tr');
  expect(rows.length).toBeGreaterThan(5);
  for (const row of rows) {
    const name = textOf(row.querySelector('th'));
    const bytes = readFileSync(join(DEMO_SITE, 'panels', slug, 'files', name));
    expect(bytes.equals(readFileSync(join(DEMO_FOLDER, 'panels', slug, name))), name).toBe(true);
    expect(textOf(row.querySelector('.hash')), name).toBe(createHash('sha256').update(bytes).digest('hex'));
  }
});

test.each(withFiles)('%s: the panel’s pages lead to them, the calculation with every hash', (slug) => {
  const links = pageAt(`/panels/${slug}/`).document.querySelectorAll(`a[href="/panels/${slug}/files/"]`);
  expect(links.length).toBeGreaterThan(0);
  const calculation = textOf(pageAt(`/panels/${slug}/methodology/`).document.querySelector('main'));
  for (const row of pageAt(`/panels/${slug}/files/`).document.querySelectorAll('table.files tbody tr')) {
    expect(calculation).toContain(textOf(row.querySelector('.hash')));
  }
});
