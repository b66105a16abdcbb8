/** Colours of the page for what is drawn on a canvas, which no style reaches. */
export interface PageColours {
  ink: string;
  soft: string;
  rule: string;
  accent: string;
  paper: string;
  font: string;
}

/** As the page has them now: light, dark, or the reader's own. */
export function pageColours(): PageColours {
  const isForced = matchMedia('(forced-colors: active)').matches;
  const of = (name: string, own: string) => {
    const probe = document.createElement('span');
    // Else a reader's own colours would all come out as that of letters.
    probe.style.setProperty('forced-color-adjust', 'none');
    probe.style.color = isForced ? own : `var(${name})`;
    document.body.append(probe);
    const { color } = getComputedStyle(probe);
    probe.remove();
    return color;
  };
  return {
    ink: of('--ink', 'CanvasText'),
    soft: of('--soft', 'CanvasText'),
    rule: of('--rule', 'GrayText'),
    accent: of('--accent', 'LinkText'),
    paper: of('--paper', 'Canvas'),
    font: getComputedStyle(document.documentElement).fontFamily,
  };
}

/** Calls back when they change. */
export function whenColoursChange(then: () => void, signal?: AbortSignal): void {
  for (const query of ['(prefers-color-scheme: dark)', '(forced-colors: active)']) {
    matchMedia(query).addEventListener('change', then, { ...(signal && { signal }) });
  }
}
