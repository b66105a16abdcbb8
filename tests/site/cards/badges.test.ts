/** Badges: each key figure of each panel, as the ledger has it, light, and harmless whatever a name holds. */
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { beforeAll, expect, test } from 'vitest';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { badgeCode, badgeFiles, badgeHtml, badgeSize, badgeSvg } from '../../../src/site/cards/badge-files.ts';
import { type BadgeView, badgeViews } from '../../../src/site/cards/badge-view.ts';
import { cardsView } from '../../../src/site/cards/cards-view.ts';
import { showFigure } from '../../../src/words/format.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

let ledger: Ledger;
let views: BadgeView[];
beforeAll(() => {
  ledger = demoLedger().ledger;
  views = [...ledger.panels.values()].flatMap((it) => badgeViews(it, ledger));
});

test('each has value and interval of the ledger, its day and its calculation', () => {
  for (const panel of ledger.panels.values()) {
    for (const view of badgeViews(panel, ledger)) {
      const it = panel.figures.get(view.metric);
      if (isFigure(it)) expect(view.value).toBe(showFigure(it, 'EUR').text);
      else expect(view.value).not.toBe('');
      expect(view.from).toContain(ledger.guide.title);
      expect(view.calculation).toBe(
        `https://panels.curlewstrand.example/panels/${panel.slug}/methodology/#${view.metric}`,
      );
    }
  }
  const light = views.find((it) => it.panel === 'Kelpwright Gannet' && it.metric === 'optical-power');
  expect(light).toMatchObject({ value: '207 ± 12 W', from: '17 Nov 2026, The Curlew Strand panel ledger' });
});

test('doubts and withdrawals go with the figure', () => {
  const mean = views.find((it) => it.panel === 'Quennick Dab' && it.metric === 'mean-irradiance');
  expect(mean?.remark).toContain('in doubt');
  expect(badgeSvg(mean as BadgeView)).toContain('in doubt');
  const [panel] = ledger.panels.values();
  if (!panel) throw new Error('no panel');
  const [withdrawn] = badgeViews({ ...panel, data: { ...panel.data, status: 'withdrawn' } }, ledger);
  expect(withdrawn?.remark).toContain('withdrawn');
});

test('a badge is whole XML under 2 KB with a title and a description, without script or anything from elsewhere', () => {
  for (const view of views) {
    const svg = badgeSvg(view);
    expect(XMLValidator.validate(svg)).toBe(true);
    expect(Buffer.byteLength(svg)).toBeLessThan(2048);
    expect(svg).not.toMatch(/<script|href|url\(|style=/);
    const { svg: read } = new XMLParser().parse(svg);
    expect(read.title['#text'] ?? read.title).toBe(`${view.panel}: ${view.name}`);
  }
});

test('a name is text in badge, card and code', () => {
  const hostile: BadgeView = { ...(views[0] as BadgeView), panel: '"><script>alert(1)</script><img onerror=x src=y>' };
  for (const text of [badgeSvg(hostile), badgeHtml(hostile, 'A & B'), badgeCode(hostile, 'https://panels.example')]) {
    expect(text).not.toMatch(/<script>|<img onerror|""/);
    expect(text).toContain('&quot;&gt;&lt;script&gt;');
  }
});

test('every panel has them at the same addresses, where the guide asks for them', () => {
  const paths = badgeFiles(ledger).map((it) => it.path);
  expect(paths).toHaveLength(1 + ledger.panels.size * 8 * 2);
  expect(paths).toContain('cards/kelpwright-gannet/mean-irradiance.svg');
  expect(paths).toContain('cards/kelpwright-gannet/mean-irradiance.html');
  const without = { ...ledger, guide: { ...ledger.guide, cards: { preview: true, show: true, badges: false } } };
  expect(badgeFiles(without)).toEqual([]);
  expect(cardsView(without).panels.flatMap((it) => it.badges)).toEqual([]);
});

test('why there is no figure is no larger than a sentence', () => {
  const gap = views.find((it) => it.panel === 'Quennick Dab' && it.metric === 'efficiency-combined');
  expect(gap?.isGap).toBe(true);
  expect(badgeSize(gap as BadgeView).width).toBeLessThan(400);
  expect(badgeHtml(gap as BadgeView, 'Guide')).toContain('<p class="gap">');
});

test('a frame has a name and the address of the small card', () => {
  const { frame } = cardsView(ledger);
  expect(frame?.code).toMatch(
    /^<iframe src="https:\/\/panels\.curlewstrand\.example\/cards\/fennimarsh-reed\/[\w-]+\.html" title="Fennimarsh Electric Reed: [^"]+" width="320" height="160" loading="lazy"><\/iframe>$/,
  );
});

test('the code to copy shows the badge at its full address and leads to the calculation', () => {
  const gannet = cardsView(ledger).panels.find((it) => it.name === 'Kelpwright Gannet');
  const code = gannet?.badges.find((it) => it.picture.endsWith('/optical-power.svg'))?.code;
  expect(code).toMatch(
    /^<a href="https:\/\/panels\.curlewstrand\.example\/panels\/kelpwright-gannet\/methodology\/#optical-power"><img src="https:\/\/panels\.curlewstrand\.example\/cards\/kelpwright-gannet\/optical-power\.svg" alt="Kelpwright Gannet, Optical power[^"]*: 207 ± 12 W\. 17 Nov 2026, The Curlew Strand panel ledger" width="\d+" height="\d+" loading="lazy"><\/a>$/,
  );
});
