/**
 * Reads from the source of a file which others it imports and whether it uses the page's DOM. It looks at the
 * syntax tree, so that comments and texts don't count. It knows no scopes: a name that the file declares anywhere
 * is taken for its own everywhere.
 */
import { isBuiltin } from 'node:module';
import { posix } from 'node:path';
import ts from 'typescript';

/** One import, of whatever form: static, of types only, re-exported, or dynamic. */
export interface Import {
  /** Null where a dynamic import has no plain text: then nobody can tell what it loads. */
  specifier: string | null;
  typeOnly: boolean;
  line: number;
}

/** Where a file stands: its folder of src/, and whether a reader's browser runs it. */
export type Layer = 'measure' | 'content' | 'ledger' | 'words' | 'site' | 'browser';

/**
 * Layers that a layer may import from; what is not listed here (pages, layouts, build, cli) is not limited. A file
 * that a browser runs is in a folder `browser/` of its feature; what is built may use it, for the shapes of the data
 * that it packs for it.
 */
export const LAYERS: Readonly<Record<Layer, readonly Layer[]>> = {
  measure: ['measure'],
  content: ['content', 'measure'],
  ledger: ['ledger', 'content', 'measure'],
  words: ['words', 'content', 'measure'],
  site: ['site', 'browser', 'words', 'ledger', 'content', 'measure'],
  browser: ['browser', 'words', 'measure'],
};

/** The layer of pure functions: no files, no network, no clock, no chance but a seeded one. */
const PURE = 'measure';

/** The folders whose files run in a reader's browser. */
const IN_BROWSER = /^src\/site\/[^/]+\/browser\//;

/**
 * The bench's pages hold what a tester writes against what a build does, with the same code: they read, check and work
 * out one panel. What they reach is free of Node. No other page loads these scripts.
 */
export const AT_BENCH = 'src/site/bench/browser/';
const READ_AT_BENCH = ['src/content/', 'src/ledger/'];

/** What every feature's browser folder may use of another's. */
const SHARED_IN_BROWSER = 'src/site/shared/browser/';

const DOM_NAMES = new Set(
  `window document navigator location history localStorage sessionStorage indexedDB customElements matchMedia
  getComputedStyle requestAnimationFrame requestIdleCallback alert confirm Element Node NodeList Document
  ShadowRoot DOMParser DOMRect MutationObserver IntersectionObserver ResizeObserver MouseEvent KeyboardEvent
  PointerEvent XMLHttpRequest`.split(/\s+/),
);
const isDomName = (name: string) => DOM_NAMES.has(name) || /^(HTML|SVG)\w*Element$/.test(name);

/** Imports of what has been read already: several rules ask for those of every file. */
const known = new Map<string, readonly Import[]>();

/** Every import of a TypeScript or JavaScript source. */
export function importsOf(source: string): readonly Import[] {
  const imports = known.get(source) ?? foundImports(source);
  known.set(source, imports);
  return imports;
}

function foundImports(source: string): Import[] {
  const tree = parse(source);
  const found: Import[] = [];
  const add = (node: ts.Node, specifier: ts.Node | undefined, typeOnly: boolean) =>
    found.push({
      specifier: specifier && ts.isStringLiteralLike(specifier) ? specifier.text : null,
      typeOnly,
      line: lineOf(tree, node),
    });
  walk(tree, (node) => {
    if (ts.isImportDeclaration(node)) add(node, node.moduleSpecifier, bringsTypesOnly(node.importClause));
    else if (ts.isExportDeclaration(node) && node.moduleSpecifier) add(node, node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isImportTypeNode(node)) {
      add(node, ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined, true);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node, node.arguments[0], false);
    } else if (ts.isCallExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === 'require') {
      add(node, node.arguments[0], false);
    }
  });
  return found;
}

/**
 * What a file imports against the rules of its layer, one sentence each.
 *
 * @param file from the repository's top, `src/measure/irradiance/grid.ts`
 */
export function importFaults(file: string, source: string): string[] {
  const layer = layerOf(file);
  if (!layer) return [];
  return importsOf(source).flatMap(({ specifier, line }) => {
    const at = `${file}:${line}`;
    // What the build writes after the scripts are bundled can only be named when it runs.
    if (specifier === null && file === 'src/site/search/browser/search.ts') return [];
    if (specifier === null) return [`${at} imports something that is only known when it runs`];
    if (/^(astro|@astrojs)([:/]|$)/.test(specifier) && !(layer === 'site' && file.endsWith('.astro'))) {
      return [`${at} imports ${specifier}: ${layer} knows no Astro`];
    }
    if (/^[/~#]|^@\/|^src\//.test(specifier))
      return [`${at} imports ${specifier}: write the path relative to the file`];
    if (!specifier.startsWith('.')) {
      return (layer === PURE || layer === 'browser') && isBuiltin(specifier)
        ? [`${at} imports ${specifier}: ${layer} has no input or output`]
        : [];
    }
    const target = posix.normalize(posix.join(posix.dirname(file), specifier));
    const to = layerOf(target);
    if (file.startsWith(AT_BENCH) && READ_AT_BENCH.some((it) => target.startsWith(it))) return [];
    if (!to || !LAYERS[layer].includes(to)) {
      return [`${at} imports ${target}: ${layer} may import from ${LAYERS[layer].join(', ')} only`];
    }
    if (layer === 'browser' && to === 'browser' && !isOwnBrowserFile(file, target)) {
      return [`${at} imports ${target}: another feature's browser files; what they share lies in ${SHARED_IN_BROWSER}`];
    }
    return [];
  });
}

function isOwnBrowserFile(file: string, target: string): boolean {
  return target.startsWith(SHARED_IN_BROWSER) || target.startsWith(IN_BROWSER.exec(file)?.[0] ?? '/');
}

/**
 * Ways on which some files reach what Node alone has, each one's files in a row; imports of types alone reach nothing.
 *
 * @param from names of the files that the ways start from
 */
export function waysToNode(files: ReadonlyArray<{ file: string; source: string }>, from: readonly string[]): string[] {
  const known = new Map(files.map(({ file, source }) => [file, source]));
  const ways: string[] = [];
  const seen = new Set<string>();
  const visit = (file: string, path: readonly string[]): void => {
    if (seen.has(file)) return;
    seen.add(file);
    const here = [...path, file];
    for (const { specifier, typeOnly } of importsOf(known.get(file) ?? '')) {
      if (typeOnly || specifier === null) continue;
      if (specifier.startsWith('.')) visit(posix.normalize(posix.join(posix.dirname(file), specifier)), here);
      else if (isBuiltin(specifier)) ways.push([...here, specifier].join(' > '));
    }
  };
  for (const file of from) visit(file, []);
  return ways;
}

/** Circles of imports among files: each one's files in a row, the first of them again at the end. */
export function importCircles(files: ReadonlyArray<{ file: string; source: string }>): string[] {
  const known = new Map(files.map(({ file, source }) => [file, source]));
  const targets = new Map(
    files.map(({ file, source }) => [
      file,
      importsOf(source).flatMap(({ specifier }) => {
        const target = specifier?.startsWith('.') ? posix.normalize(posix.join(posix.dirname(file), specifier)) : '';
        return known.has(target) ? [target] : [];
      }),
    ]),
  );
  const circles: string[] = [];
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (file: string) => {
    const at = path.indexOf(file);
    if (at >= 0) circles.push([...path.slice(at), file].join(' > '));
    if (at >= 0 || done.has(file)) return;
    path.push(file);
    for (const target of targets.get(file) ?? []) visit(target);
    path.pop();
    done.add(file);
  };
  for (const file of targets.keys()) visit(file);
  return circles;
}

/** Names of the page's DOM that a file uses without declaring them; none are looked for in browser folders. */
export function domFaults(file: string, source: string): string[] {
  if (IN_BROWSER.test(file)) return [];
  return foreignNames(source, isDomName).map(
    ({ name, line }) => `${file}:${line} uses ${name}: only browser folders may`,
  );
}

/** Uses of the clock, of chance and of the process in the layer of pure functions. */
export function purityFaults(file: string, source: string): string[] {
  if (layerOf(file) !== PURE) return [];
  const tree = parse(source);
  const faults: string[] = [];
  const add = (node: ts.Node, what: string) => faults.push(`${file}:${lineOf(tree, node)} ${what}`);
  walk(tree, (node) => {
    if (ts.isNewExpression(node) && node.expression.getText(tree) === 'Date' && !node.arguments?.length) {
      add(node, 'reads the clock: a day is an argument');
    }
    if (!ts.isPropertyAccessExpression(node)) return;
    const text = node.getText(tree);
    if (text === 'Date.now' || text === 'performance.now') add(node, 'reads the clock: a day is an argument');
    if (text === 'Math.random') add(node, 'draws without a seed: builds must repeat');
  });
  for (const { name, line } of foreignNames(source, (it) => it === 'process' || it === 'fetch')) {
    faults.push(`${file}:${line} uses ${name}: ${PURE} has no input or output`);
  }
  return faults;
}

/** The code in an .astro file: its front matter, and the scripts in its markup. */
export function codeOfAstro(source: string): string {
  const frontMatter = /^---\r?\n([\s\S]*?)\r?\n---/.exec(source)?.[1] ?? '';
  const scripts = [...source.matchAll(/<script\b[^>]*>([\s\S]*?)<\/script>/g)]
    .filter(([tag]) => !/^<script\b[^>]*type="application\/(ld\+)?json"/.test(tag))
    .map((match) => match[1] ?? '');
  return [frontMatter, ...scripts].join('\n;\n');
}

/** `src/measure/irradiance/grid.ts` lies in `measure`; a file of no layer in nothing. */
function layerOf(file: string): Layer | undefined {
  if (IN_BROWSER.test(file)) return 'browser';
  const folder = /^src\/([^/]+)\//.exec(file)?.[1] ?? '';
  return Object.hasOwn(LAYERS, folder) && folder !== 'browser' ? (folder as Layer) : undefined;
}

function parse(source: string): ts.SourceFile {
  return ts.createSourceFile('source.tsx', source, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
}

function walk(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  ts.forEachChild(node, (child) => walk(child, visit));
}

function lineOf(tree: ts.SourceFile, node: ts.Node): number {
  return tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1;
}

/** `import type {…}`, or every name in the braces marked as a type. */
function bringsTypesOnly(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false;
  if (clause.isTypeOnly) return true;
  const { namedBindings } = clause;
  if (clause.name || !namedBindings || !ts.isNamedImports(namedBindings)) return false;
  return namedBindings.elements.length > 0 && namedBindings.elements.every((it) => it.isTypeOnly);
}

/** Names that stand for themselves (no property, no key) and that the file does not declare. */
function foreignNames(source: string, wanted: (name: string) => boolean): Array<{ name: string; line: number }> {
  const tree = parse(source);
  const declared = new Set<string>();
  const used: Array<{ name: string; line: number }> = [];
  walk(tree, (node) => {
    if (!ts.isIdentifier(node) || !wanted(node.text)) return;
    const { parent } = node;
    const isName = (parent as { name?: ts.Node }).name === node;
    // `globalThis.document` is the DOM's, `panel.document` is not.
    if (ts.isPropertyAccessExpression(parent) && isName) {
      if (parent.expression.getText(tree) === 'globalThis') used.push({ name: node.text, line: lineOf(tree, node) });
      return;
    }
    if (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent) || ts.isMethodDeclaration(parent)) {
      if (isName) return;
    } else if (ts.isPropertyDeclaration(parent) || ts.isMethodSignature(parent) || ts.isJsxAttribute(parent)) {
      if (isName) return;
    } else if (ts.isQualifiedName(parent) && parent.right === node) return;
    else if (ts.isBindingElement(parent) && parent.propertyName === node) return;
    else if (isName && !ts.isShorthandPropertyAssignment(parent)) {
      declared.add(node.text);
      return;
    }
    used.push({ name: node.text, line: lineOf(tree, node) });
  });
  return used.filter(({ name }) => !declared.has(name));
}
