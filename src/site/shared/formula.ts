import katex from 'katex';

const rendered = new Map<string, string>();

/** Room between two formulas that are written as one. */
const APART = /\\qquad\s*/;

/**
 * TeX as MathML, which browsers draw without a script or a font of ours, and screen readers speak. What stands apart in a
 * displayed formula comes as one each, so that on a phone the next stands under the first. The search passes formulas
 * over: nobody looks for TeX, and it would fill the excerpts.
 */
export function formula(tex: string, display = false): string {
  const key = `${display}${tex}`;
  let html = rendered.get(key);
  if (html === undefined) {
    html = (display ? tex.split(APART) : [tex]).map((it) => mathOf(it, display)).join('');
    rendered.set(key, html);
  }
  return html;
}

const mathOf = (tex: string, displayMode: boolean) =>
  katex
    .renderToString(tex, { output: 'mathml', displayMode, throwOnError: true, strict: 'error' })
    .replace('class="katex"', 'class="katex" data-pagefind-ignore');
