/**
 * A figure as a sentence to quote: panel, figure, interval, method with its version, day and lasting address, all taken
 * from the page as it stands.
 *
 * @param link the figure's lasting address, beside it
 * @returns nothing where the link names no figure of a day
 */
export function quotation(link: HTMLAnchorElement): string | undefined {
  const day = /\d{4}-\d{2}-\d{2}$/.exec(link.hash)?.[0];
  const own = link.closest('details[id], p[id]');
  const value = own?.querySelector('b')?.textContent;
  if (!day || !own || !value) return undefined;
  const [panel = '', rest = ''] = document.title.split(': ');
  const guide = rest.split(' – ').at(-1);
  const method = own.parentElement?.querySelector(':scope > p > a[href*="/methods/"]')?.textContent;
  const interval = /95 % \S+ to \S*[\d∞]/.exec(own.textContent ?? '')?.[0];
  const said = [interval, method && `method: ${method}`, `session of ${day}`].filter(Boolean).join('; ');
  return `${panel}: ${nameOf(own)} ${value} (${said}). ${guide}, ${link.href}`;
}

/** What the figure is called, without its value. */
function nameOf(own: Element): string {
  const name = own.querySelector('summary')?.firstChild ?? own.querySelector('a');
  return (name?.textContent ?? '').trim();
}
