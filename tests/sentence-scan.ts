/**
 * Finds sentences in the source of a file: texts of two words or more with a space between them. It looks at the syntax
 * tree, so that comments don't count. What tells a programmer of a fault, the message of a thrown error, may be words.
 */
import ts from 'typescript';

/** Two words of letters, of two letters at least: `not measured`. Notation such as `E \cdot A` has none. */
const PHRASE = /(?<![\p{L}\p{N}\\_-])\p{L}[\p{L}’'-]*\p{Ll}[,;:.]? +\p{L}[\p{L}’'-]*\p{Ll}/u;

/** A text with the line that it starts on. */
export interface Sentence {
  line: number;
  text: string;
}

/** Every text of a TypeScript source that is words; texts with numbers put in are looked at as a whole. */
export function sentencesIn(source: string): Sentence[] {
  const tree = ts.createSourceFile('source.ts', source, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS);
  const found: Sentence[] = [];
  const visit = (node: ts.Node): void => {
    if (isLeftOut(node)) return;
    const text = textOf(node);
    if (text !== undefined && PHRASE.test(text)) {
      found.push({ line: tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1, text });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

/** Imports, types, and what is thrown. */
function isLeftOut(node: ts.Node): boolean {
  return (
    ts.isImportDeclaration(node) ||
    ts.isExportDeclaration(node) ||
    (ts.isNewExpression(node) && ts.isThrowStatement(node.parent) && /Error$/.test(node.expression.getText()))
  );
}

/** A text as it stands, and with a 0 in the place of each value that is put in: a word on either side makes no phrase. */
function textOf(node: ts.Node): string | undefined {
  if (ts.isStringLiteralLike(node)) return node.text;
  if (!ts.isTemplateExpression(node)) return undefined;
  return node.head.text + node.templateSpans.map((span) => `0${span.literal.text}`).join('');
}
