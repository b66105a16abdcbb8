import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Problem } from '../../content/schema/problem.ts';
import { html } from '../../site/shared/html.ts';
import type { LiveState } from './live-content.ts';

/** Where open pages ask how the content stands. */
const STATE = '/desk/content.json';

export interface ServeProblemsOptions {
  state: () => LiveState;
  /** True where a page can be made: of the content as it is, or as it was before the problems. */
  hasLedger: () => boolean;
  /** A page with the scripts that the development server gives every page. */
  withScripts: (address: string, page: string) => Promise<string>;
  /** A script that shows problems, as an address. */
  script: string;
  /** Style sheets, as addresses. */
  styles: readonly string[];
}

/**
 * Answers how the content stands, and notes its version beside every page; for a page, while there is no content yet
 * that it could be made of, it answers with what is wrong. Everything else is left to the next in line.
 */
export function serveProblems({ state, hasLedger, withScripts, script, styles }: ServeProblemsOptions) {
  return (request: IncomingMessage, response: ServerResponse, next: (error?: unknown) => void): void => {
    const address = request.url ?? '/';
    const { version, problems } = state();
    if (address === STATE) {
      response.setHeader('content-type', 'application/json; charset=utf-8');
      response.end(JSON.stringify({ version, problems }));
      return;
    }
    const isPage = request.headers.accept?.includes('text/html') && /^\/[^@]*$/.test(address);
    if (isPage) response.setHeader('server-timing', `content;desc="${version}"`);
    if (!isPage || hasLedger()) {
      next();
      return;
    }
    withScripts(address, problemPage(problems, script, styles)).then((page) => {
      response.statusCode = 500;
      response.setHeader('content-type', 'text/html; charset=utf-8');
      response.end(page);
    }, next);
  };
}

function problemPage(problems: readonly Problem[], script: string, styles: readonly string[]): string {
  const rows = problems.map(
    ({ file, line, field, found, wanted, hint }) =>
      html`<li>${file}${line === undefined ? '' : `:${line}`} ${field}<br>found: ${found}<br>wanted: ${wanted}${hint && html`<br>hint: ${hint}`}</li>`,
  );
  return html`<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>The content has problems</title>${styles.map((it) => html`<link rel="stylesheet" href="${it}">`)}</head>
<body><noscript><ol>${rows}</ol></noscript><main><h1>There is nothing to show yet</h1><p>Pages come as soon as the content has no problem.</p></main>
<script type="module" src="${script}"></script></body></html>`.text;
}
