import type { PanelEntry } from '../../ledger/ledger.ts';
import type { Method } from '../../measure/methods.ts';
import { showDate } from '../../words/format.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { siteAddress } from '../shared/site-address.ts';

/** What a page is cited by. */
export interface Citation {
  /** Among the works of one list, and the same for as long as the version is: letters, digits, hyphens. */
  id: string;
  title: string;
  /** The guide that it stands in, and who publishes that. */
  guide: string;
  publisher: string;
  version: string;
  /** Day of what the version stands for, `YYYY-MM-DD`: never that of a build. */
  date: string;
  /** In full. */
  address: string;
}

interface GuideWords {
  title: string;
  publisher: string;
  site: string;
}

/** How a panel's page is cited: by its newest session; nothing where it has none. */
export function panelCitation({ slug, name, current }: PanelEntry, guide: GuideWords): Citation | undefined {
  if (!current) return undefined;
  const { date, conditions } = current;
  return {
    id: `${slug}-${date}`,
    title: `${name}: readings and figures with their uncertainty`,
    ...named(guide),
    version: `session of ${showDate(date)}, bench procedure version ${conditions.methodVersion}`,
    date,
    address: siteAddress(panelAddress(slug), guide.site),
  };
}

/** How a panel's calculation page or its page of files is cited: as the panel, by what it is called itself. */
export function workingCitation(
  panel: PanelEntry,
  guide: GuideWords,
  page: 'methodology' | 'files',
): Citation | undefined {
  const whole = panelCitation(panel, guide);
  if (!whole) return undefined;
  return {
    ...whole,
    id: `${whole.id}-${page}`,
    title: `${panel.name}: ${page === 'files' ? 'files from the bench' : 'every reading, every step'}`,
    address: `${whole.address}${page}/`,
  };
}

/** How a method's page is cited: by its version of today, at the address of that version. */
export function methodCitation(
  { id, name, version }: Pick<Method, 'id' | 'name' | 'version'>,
  versions: ReadonlyArray<{ version: number; date: string }>,
  guide: GuideWords,
): Citation {
  const since = versions.find((it) => it.version === version)?.date;
  if (since === undefined) throw new Error(`version ${version} of the method "${id}" has no day`);
  return {
    id: `${id}-${version}`,
    title: `${name}: method`,
    ...named(guide),
    version: `version ${version}`,
    date: since,
    address: siteAddress(`/methods/${id}/#version-${version}`, guide.site),
  };
}

/** How the guide's data are cited: by the day that they were worked out for. */
export function guideCitation(guide: GuideWords, today: string): Citation {
  return {
    id: `data-${today}`,
    title: 'Figures, readings and prices',
    ...named(guide),
    version: `as of ${showDate(today)}`,
    date: today,
    address: siteAddress('/data/', guide.site),
  };
}

const named = ({ title, publisher }: GuideWords) => ({ guide: title, publisher });

/** In words, for a footnote. */
export function citationText({ publisher, title, guide, version, date, address }: Citation): string {
  const day = showDate(date);
  return `${publisher}: ${title}. ${guide}, ${version}${version.includes(day) ? '' : `, ${day}`}. ${address}`;
}

/** As CSL-JSON, which reference managers read: an item of their lists. */
export function citationCsl({
  id,
  title,
  guide,
  publisher,
  version,
  date,
  address,
}: Citation): Record<string, unknown> {
  return {
    id,
    type: 'webpage',
    title,
    author: [{ literal: publisher }],
    'container-title': guide,
    publisher,
    version,
    issued: { 'date-parts': [date.split('-').map(Number)] },
    URL: address,
  };
}

/** As BibTeX: letters that mean something there are escaped, and capitals are kept by braces. */
export function citationBibtex({ id, title, guide, publisher, version, date, address }: Citation): string {
  const [year, month] = date.split('-');
  const fields = [
    ['author', `{${escaped(publisher)}}`],
    ['title', `{${escaped(title)}}`],
    ['howpublished', escaped(guide)],
    ['version', escaped(version)],
    ['year', year],
    ['month', String(Number(month))],
    ['date', date],
    ['url', address],
  ];
  return `@misc{${id},\n${fields.map(([name, value]) => `  ${name} = {${value}}`).join(',\n')}\n}`;
}

const SIGNS: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
};

function escaped(text: string): string {
  return text.replace(/[\\~^{}&%$#_]/g, (it) => SIGNS[it] ?? `\\${it}`);
}
