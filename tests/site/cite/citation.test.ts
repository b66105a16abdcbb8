import { Cite, plugins } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import { beforeAll, expect, test } from 'vitest';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { methodById } from '../../../src/measure/methods.ts';
import {
  type Citation,
  citationBibtex,
  citationCsl,
  citationText,
  guideCitation,
  methodCitation,
  panelCitation,
  workingCitation,
} from '../../../src/site/cite/citation.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const ODD: Citation = {
  id: 'odd-2026-11-24',
  title: 'Tests of the R&B 60_2: 50 % off {really} ~ #1 \\o/ für 5 $',
  guide: 'Ledger & Co.',
  publisher: 'A & B {Library}',
  version: 'version 2',
  date: '2026-01-05',
  address: 'https://panels.example/a_b/#x%20y',
};

let ledger: Ledger;
let all: Citation[];
beforeAll(() => {
  ledger = demoLedger().ledger;
  const panels = [...ledger.panels.values()].flatMap((it) => panelCitation(it, ledger.guide) ?? []);
  const method = methodCitation(
    methodById('mean-irradiance'),
    [
      { version: 1, date: '2026-02-01' },
      { version: 2, date: '2026-09-01' },
      { version: 3, date: '2026-10-01' },
      { version: 4, date: '2026-11-01' },
    ],
    ledger.guide,
  );
  all = [...panels, method, guideCitation(ledger.guide, ledger.today), ODD];
});

/** As a reference manager's library reads it. */
function readBack(text: string) {
  plugins.config.get('@bibtex').parse.sentenceCase = 'never';
  const [item] = new Cite(text).data as Array<Record<string, unknown>>;
  return item;
}

test('BibTeX is read back whole by a library of others, odd letters too', () => {
  for (const it of all) {
    const item = readBack(citationBibtex(it));
    expect(item, it.id).toMatchObject({ title: it.title, URL: it.address, 'citation-key': it.id, version: it.version });
    expect(JSON.stringify(item?.author), it.id).toContain(it.publisher);
    expect(item?.issued, it.id).toEqual({ 'date-parts': [it.date.split('-').map(Number)] });
  }
});

test('CSL-JSON is taken as it is', () => {
  for (const it of all) {
    const item = readBack(JSON.stringify(citationCsl(it)));
    expect(item, it.id).toMatchObject({ type: 'webpage', title: it.title, URL: it.address, version: it.version });
    expect(item?.issued, it.id).toEqual({ 'date-parts': [it.date.split('-').map(Number)] });
  }
});

test('readings and files of a panel are cited by their own pages, each with a name of its own', () => {
  for (const panel of ledger.panels.values()) {
    const [whole, readings, files] = [
      panelCitation(panel, ledger.guide),
      workingCitation(panel, ledger.guide, 'methodology'),
      workingCitation(panel, ledger.guide, 'files'),
    ];
    expect(new Set([whole?.id, readings?.id, files?.id]).size).toBe(whole ? 3 : 1);
    expect(readings?.address).toBe(whole && `${whole.address}methodology/`);
    expect(files?.version).toBe(whole?.version);
  }
});

test('in words it has who, what, where, version, day and address', () => {
  const gannet = all.find((it) => it.id.startsWith('kelpwright-gannet'));
  expect(gannet && citationText(gannet)).toMatchInlineSnapshot(
    `"Curlew Strand Library of Things: Kelpwright Gannet: readings and figures with their uncertainty. The Curlew Strand panel ledger, session of 17 Nov 2026, bench procedure version 1. https://panels.curlewstrand.example/panels/kelpwright-gannet/"`,
  );
  const method = all.find((it) => it.id === 'mean-irradiance-4');
  expect(method && citationText(method)).toMatchInlineSnapshot(
    `"Curlew Strand Library of Things: Mean irradiance: method. The Curlew Strand panel ledger, version 4, 1 Nov 2026. https://panels.curlewstrand.example/methods/mean-irradiance/#version-4"`,
  );
});

test('a panel that was never on the bench has nothing to be cited by', () => {
  const panel = [...ledger.panels.values()].find((it) => it.current);
  if (!panel) throw new Error('the demonstration has panels');
  expect(panelCitation({ ...panel, current: undefined }, ledger.guide)).toBeUndefined();
});

test('ids are told apart', () => {
  expect(new Set(all.map((it) => it.id)).size).toBe(all.length);
});
