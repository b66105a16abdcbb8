import fc from 'fast-check';
import { Config, Parser } from 'html-validate';
import { expect, test } from 'vitest';
import { calculationHtml } from '../../../src/site/calculation/calculation-html.ts';
import { Html, html } from '../../../src/site/shared/html.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

test('escapes texts, takes markup as it is, joins lists, leaves out what is absent', () => {
  const rows = ['a & b', '<i>'].map((it) => html`<li>${it}</li>`);
  expect(html`<ul title="${'"x"'}">${rows}${undefined}${null}${false}</ul>${0}`.text).toBe(
    '<ul title="&quot;x&quot;"><li>a &amp; b</li><li>&lt;i&gt;</li></ul>0',
  );
  expect(html`${new Html('<b>1</b>')}${['<', [html`<br>`]]}`.text).toBe('<b>1</b>&lt;<br>');
});

test('no text ever becomes an element or an attribute', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom('<', '>', '&', '"', "'", '=', '/', '!', '-', ' ', 'b', ';', '’') }),
      (text) => {
        const { text: markup } = html`<p title="${text}">${text}</p>`;
        const inner = markup.slice('<p title="'.length, -'</p>'.length);
        expect(inner.replace(/">/, '')).not.toMatch(/[<>"]/);
        const plain = (it: string) =>
          it.replace(
            /&(lt|gt|quot|amp);/g,
            (_, name: 'lt' | 'gt' | 'quot' | 'amp') => ({ lt: '<', gt: '>', quot: '"', amp: '&' })[name],
          );
        expect(inner.split('">').map(plain)).toEqual([text, text]);
      },
    ),
  );
});

test('a calculation page keeps what testers and makers wrote as text', async () => {
  const demo = demoLedger();
  const name = 'Evil <script>alert("1")</script> & Sons';
  const [panel] = demo.ledger.panels.values();
  if (!panel) throw new Error('the demonstration has no panel');
  const markup = calculationHtml({ ...panel, name }, { ...demo.ledger.guide, withdrawn: [] });
  expect(markup).toContain(
    'Evil &lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; Sons<span class="unseen">:</span> <small>every reading, every step</small>',
  );
  const document = new Parser(await Config.empty().resolve()).parseHtml(`<main>${markup}</main>`);
  expect(document.querySelectorAll('script')).toEqual([]);
  expect(document.querySelectorAll('details').length).toBeGreaterThan(30);
});
