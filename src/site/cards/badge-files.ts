import type { Ledger } from '../../ledger/ledger.ts';
import { textWidth } from '../guide/picture/text-width.ts';
import { CONTENT_POLICY } from '../shared/content-policy.ts';
import { html } from '../shared/html.ts';
import { siteAddress } from '../shared/site-address.ts';
import { type BadgeView, badgeViews } from './badge-view.ts';
import { BADGE_STYLES } from './card-files.ts';
import { INK } from './drawing-ink.ts';

const LETTERS = { small: 13, gap: 15, large: 20 } as const;
/** Size of a frame that holds the small card of any figure, px. */
const FRAME = { width: 320, height: 160 } as const;

/** Why there is no figure is a sentence, and no larger than one. */
const valueSize = ({ isGap }: Pick<BadgeView, 'isGap'>) => (isGap ? LETTERS.gap : LETTERS.large);
const MARGIN = 10;
/** Base lines of a badge's lines. */
const LINES = { name: 21, value: 45, remark: 64 } as const;

/** Whole width and height of a badge, px. Room is kept as for a wide face, since readers have their own. */
export function badgeSize(view: BadgeView): { width: number; height: number } {
  const { panel, name, value, from, remark } = view;
  const words = [
    textWidth(`${panel}: ${name}`, LETTERS.small),
    textWidth(value, valueSize(view)),
    textWidth(from, LETTERS.small),
    textWidth(remark ?? '', LETTERS.small),
  ];
  return { width: Math.ceil(Math.max(...words)) + 2 * MARGIN, height: remark ? 92 : 74 };
}

/** What a badge says to who can't see it, and what stands where it can't be loaded. */
export const badgeWords = ({ panel, name, value, remark, from }: BadgeView): string =>
  `${panel}, ${name}: ${value}${remark ? ` (${remark})` : ''}. ${from}`;

/** A badge: a slip of paper with a figure, its interval, its day and whose it is. */
export function badgeSvg(view: BadgeView): string {
  const { panel, name, value, from, remark } = view;
  const { width, height } = badgeSize(view);
  const line = (y: number, text: string, fill: string) =>
    html`<text x="${MARGIN}" y="${y}" fill="${fill}">${text}</text>`;
  return html`<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="t d" font-family="'Source Sans 3',Arial,sans-serif" font-size="${LETTERS.small}"><title id="t">${panel}: ${name}</title><desc id="d">${badgeWords(view)}</desc><path d="M0 0h${width}v${height}H0z" fill="${INK.paper}"/><path d="M0 1h${width}" stroke="${INK.ink}" stroke-width="2"/><path d="M0 ${height - 0.5}h${width}" stroke="${INK.rule}"/>${line(LINES.name, `${panel}: ${name}`, INK.soft)}<text x="${MARGIN}" y="${LINES.value}" fill="${INK.ink}" font-size="${valueSize(view)}" font-weight="600">${value}</text>${line(LINES.remark, from, INK.soft)}${remark && line(LINES.remark + 18, remark, INK.ink)}</svg>
`.text;
}

/** A badge with its link, for other writers' pages. */
export function badgeCode(view: BadgeView, site: string): string {
  const { width, height } = badgeSize(view);
  const address = siteAddress(`${view.address}.svg`, site);
  return html`<a href="${view.calculation}"><img src="${address}" alt="${badgeWords(view)}" width="${width}" height="${height}" loading="lazy"></a>`
    .text;
}

/** The small card of a figure in a frame with a name, for other writers' pages. */
export function frameCode(view: BadgeView, site: string): string {
  const { width, height } = FRAME;
  return html`<iframe src="${siteAddress(`${view.address}.html`, site)}" title="${view.panel}: ${view.name}" width="${width}" height="${height}" loading="lazy"></iframe>`
    .text;
}

/** The small card of a figure: a page of its own, for a frame. It runs nothing and loads its styles alone. */
export function badgeHtml(view: BadgeView, guide: string): string {
  const { panel, name, value, interval, from, remark, calculation } = view;
  const { pathname, hash } = new URL(calculation);
  return html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="content-security-policy" content="${CONTENT_POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${panel}: ${name} – ${guide}</title>
<meta name="description" content="${badgeWords(view)}">
<link rel="canonical" href="${calculation}">
<link rel="icon" href="/icon.svg" type="image/svg+xml">
<link rel="stylesheet" href="${BADGE_STYLES}">
</head>
<body>
<main>
<h1>${panel}: ${name}</h1>
<p class="${view.isGap ? 'gap' : 'value'}"><a href="${pathname}${hash}" target="_top">${value}</a></p>
<p>${[interval, from, remark].filter(Boolean).join('; ')}. <a href="/cautions/" target="_top">Cautions</a></p>
</main>
</body>
</html>
`.text;
}

const STYLES = `:root{color-scheme:light dark;--paper:light-dark(#fcfbf8,#15191c);--ink:light-dark(#1b2125,#e8e5dd);--soft:light-dark(#545c61,#a9b0b2)}
body{margin:0;padding:.5rem .75rem;border-top:2px solid var(--ink);background:var(--paper);color:var(--soft);font:.9rem/1.35 "Source Sans 3",Arial,sans-serif}
h1{margin:0;font:inherit}
p{margin:.15rem 0 0}
a{display:inline-block;min-height:24px;color:var(--ink)}
.gap a{font-weight:600}
.value a{font-size:1.4rem;font-weight:600}
`;

/** A badge or a card as a file that the build writes. */
export interface BadgeFile {
  /** Its address without the leading slash. */
  path: string;
  type: 'image/svg+xml' | 'text/css' | 'text/html';
  text(): Iterable<string>;
}

/** Every badge and card that the guide asks for. */
export function badgeFiles(ledger: Ledger): BadgeFile[] {
  const { guide, panels } = ledger;
  if (!guide.cards.badges) return [];
  return [
    { path: BADGE_STYLES.slice(1), type: 'text/css', text: () => [STYLES] },
    ...[...panels.values()].flatMap((panel) =>
      badgeViews(panel, ledger).flatMap((view): BadgeFile[] => [
        { path: `${view.address.slice(1)}.svg`, type: 'image/svg+xml', text: () => [badgeSvg(view)] },
        { path: `${view.address.slice(1)}.html`, type: 'text/html', text: () => [badgeHtml(view, guide.title)] },
      ]),
    ),
  ];
}
