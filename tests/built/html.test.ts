import { HtmlValidate } from 'html-validate';
import { expect, test } from 'vitest';
import { attribute, PAGES } from './site.ts';

const validator = new HtmlValidate({
  root: true,
  extends: ['html-validate:recommended', 'html-validate:document'],
  rules: {
    // A matter of search engines' taste: a title holds the panel's name and the guide's, and both are given.
    'long-title': 'off',
    // The search answers while one types and sends nothing, so there is nothing to submit.
    'wcag/h32': 'off',
    // A table that a narrow window shows as blocks is none to some browsers, unless its parts say what they are.
    'no-redundant-role': 'off',
    // A panel’s pages leave out end tags that HTML lets be left out: they are as many as panels.
    'no-implicit-close': 'off',
    // Hashes guard files of other hosts; ours come from where the page comes from, and the page has none else.
    'require-sri': ['error', { target: 'crossorigin' }],
  },
});

test.each(PAGES.map((it) => [it.address, it.html]))('%s is valid HTML', async (address, html) => {
  const report = await validator.validateString(html, address);
  const messages = report.results.flatMap((it) => it.messages);
  expect(messages.map((it) => `${it.line}:${it.column} ${it.ruleId}: ${it.message}`)).toEqual([]);
});

test.each(PAGES.map((it) => [it.address, it.document] as const))(
  '%s names each of its scrolling tables, and each differently',
  (_, document) => {
    // Those who go through a page by the Tab key and do not see it hear these names and nothing else.
    const names = document.querySelectorAll('[tabindex="0"]').map((it) => attribute(it, 'aria-label'));
    expect(names.filter((it, i) => it === '' || names.indexOf(it) !== i)).toEqual([]);
  },
);

test('faults are found', async () => {
  const report = await validator.validateString('<!doctype html><html lang="en"><p id="a"><div id="a"></p></html>');
  const rules = report.results.flatMap((it) => it.messages.map(({ ruleId }) => ruleId));
  expect(rules).toEqual(expect.arrayContaining(['close-order', 'no-dup-id']));
});
