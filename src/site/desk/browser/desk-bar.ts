/**
 * What the tester sees above every page while writing: the way to the tester's own pages, and what is wrong with the
 * content, until it is mended. A build has none of it.
 */
import { html } from '../../shared/browser/dom.ts';

/** As a problem comes from the development server. */
interface Problem {
  file: string;
  line?: number;
  field: string;
  found: string;
  wanted: string;
  hint?: string;
}

/** What the development server gives a script to be told by. */
interface Hot {
  on(event: string, listener: (data: readonly Problem[]) => void): void;
}

const bar = html(
  'nav',
  { class: 'desk-bar', 'aria-label': 'For the tester' },
  html('span', {}, 'For you alone:'),
  html('a', { href: '/desk/changes/' }, 'What changes'),
  html('a', { href: '/desk/stale/' }, 'What is stale'),
  html('a', { href: '/bench/' }, 'Bench pad'),
);
const list = html('section', {
  class: 'desk-problems',
  role: 'alert',
  'aria-label': 'Problems of the content',
  hidden: true,
});
document.querySelector('.skip')?.after(bar, list);
if (!bar.isConnected) document.body.prepend(bar, list);
for (const link of bar.querySelectorAll('a')) {
  if (link.pathname === location.pathname) link.setAttribute('aria-current', 'page');
}

function show(problems: readonly Problem[]): void {
  list.hidden = problems.length === 0;
  if (problems.length === 0) {
    list.replaceChildren();
    return;
  }
  const count = problems.length === 1 ? 'A problem' : `${problems.length} problems`;
  list.replaceChildren(
    html('p', {}, html('strong', {}, `${count} in the content.`), ' Pages stay as they were until that is mended.'),
    html('ol', {}, ...problems.map(entry)),
  );
}

function entry({ file, line, field, found, wanted, hint }: Problem): HTMLElement {
  const row = (name: string, text: string | undefined) => (text ? [html('dt', {}, name), html('dd', {}, text)] : []);
  return html(
    'li',
    {},
    html('code', {}, line === undefined ? file : `${file}:${line}`),
    field && ` ${field}`,
    html('dl', {}, ...row('found', found), ...row('wanted', wanted), ...row('hint', hint)),
  );
}

/** Of the content, when this page was made: the server says it beside the page. */
function ownVersion(): string | undefined {
  const [navigation] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
  return navigation?.serverTiming.find((it) => it.name === 'content')?.description;
}

/** What happened while the page was loading, and nobody could tell it. */
async function catchUp(): Promise<void> {
  const response = await fetch('/desk/content.json');
  if (!response.ok) return;
  const { version, problems } = (await response.json()) as { version: string; problems: readonly Problem[] };
  const own = ownVersion();
  if (own !== undefined && own !== version) location.reload();
  else show(problems);
}

// The bundler gives this to who names it in full.
const hot = (import.meta as unknown as { hot?: Hot }).hot;
hot?.on('panel-ledger:problems', show);
await catchUp();
