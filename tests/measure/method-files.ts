/** Which functions a file offers, and which of them other files of src/ call by name: what a method page may cite as computing. */
import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import ts from 'typescript';
import { codeOfAstro } from '../architecture-scan.ts';

/** A file of src/: its path from the repository's top, and its code. */
export interface SourceFile {
  file: string;
  source: string;
}

/** Every file of src/ with code in it. */
export function sourceFiles(top: URL): SourceFile[] {
  return readdirSync(new URL('src/', top), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|astro)$/.test(entry.name))
    .map((entry) => {
      const file = `${entry.parentPath}/${entry.name}`.replaceAll('\\', '/').replace(/^.*?\/src\//, 'src/');
      const text = readFileSync(new URL(file, top), 'utf8');
      return { file, source: file.endsWith('.astro') ? codeOfAstro(text) : text };
    });
}

const parse = (source: string) => ts.createSourceFile('a.ts', source, ts.ScriptTarget.Latest, true);
const isExported = (node: ts.HasModifiers) =>
  node.modifiers?.some((it) => it.kind === ts.SyntaxKind.ExportKeyword) ?? false;

/** Names of what a file exports that computes or checks: functions, classes, schemas and checks, no plain numbers. */
function computing(source: string): string[] {
  return parse(source).statements.flatMap((node) => {
    if ((ts.isFunctionDeclaration(node) || ts.isClassDeclaration(node)) && isExported(node))
      return node.name?.text ?? [];
    if (!ts.isVariableStatement(node) || !isExported(node)) return [];
    return node.declarationList.declarations.flatMap(({ name, initializer }) => {
      const isPlain = !initializer || /^[\w.]+$|^\d|^['"`]/.test(initializer.getText());
      return isPlain ? [] : name.getText();
    });
  });
}

/** Values that a file takes from others of src/, as `<file> <name>`; a whole module as `<file> *`. */
function taken({ file, source }: SourceFile): string[] {
  return parse(source).statements.flatMap((node) => {
    const isFrom = ts.isImportDeclaration(node) || ts.isExportDeclaration(node);
    if (!isFrom || !node.moduleSpecifier || !ts.isStringLiteral(node.moduleSpecifier)) return [];
    if (!node.moduleSpecifier.text.startsWith('.')) return [];
    const from = posix.normalize(posix.join(posix.dirname(file), node.moduleSpecifier.text));
    if (ts.isExportDeclaration(node)) {
      if (node.isTypeOnly) return [];
      const names = node.exportClause && ts.isNamedExports(node.exportClause) ? node.exportClause.elements : undefined;
      return names
        ? names.flatMap((it) => (it.isTypeOnly ? [] : `${from} ${(it.propertyName ?? it.name).text}`))
        : `${from} *`;
    }
    const clause = node.importClause;
    if (!clause || clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return [];
    const names =
      clause.namedBindings && ts.isNamedImports(clause.namedBindings) ? clause.namedBindings.elements : undefined;
    return names
      ? names.flatMap((it) => (it.isTypeOnly ? [] : `${from} ${(it.propertyName ?? it.name).text}`))
      : `${from} *`;
  });
}

/**
 * What is wrong with the files that methods cite: a file that is not there, or one that computes nothing for anybody in
 * src/, so that only tests call it. Files that only list the methods' constants don't count as callers.
 */
export function citationFaults(
  cited: ReadonlyArray<{ id: string; file: string }>,
  files: readonly SourceFile[],
): string[] {
  const sources = new Map(files.map(({ file, source }) => [file, source]));
  const used = new Set(files.filter(({ file }) => !file.endsWith('method-constants.ts')).flatMap(taken));
  return cited.flatMap(({ id, file }) => {
    const source = sources.get(file);
    if (source === undefined) return [`${id}: ${file} is not there`];
    const isUsed = used.has(`${file} *`) || computing(source).some((name) => used.has(`${file} ${name}`));
    return isUsed ? [] : [`${id}: nothing in src/ calls what ${file} computes`];
  });
}
