import katex from 'katex';

const rendered = new Map<string, string>();

/** TeX as MathML, which browsers draw without a script or a font of ours, and screen readers speak. */
export function formula(tex: string, display = false): string {
  const key = `${display}${tex}`;
  let html = rendered.get(key);
  if (html === undefined) {
    html = katex.renderToString(tex, { output: 'mathml', displayMode: display, throwOnError: true, strict: 'error' });
    rendered.set(key, html);
  }
  return html;
}
