/** One way to mend a line. */
export interface Edit {
  line: string;
  /** What the tester has to do. */
  hint: string;
  /** How far-fetched it is; of two that mend as much, the lower one counts. */
  cost: number;
}

/** Spaces before a line's first sign; undefined for a blank line or a comment. */
export function indentOf(line: string): number | undefined {
  const start = /^( *)[^\s#]/.exec(line);
  return start ? (start[1] ?? '').length : undefined;
}

/** The usual slips of a line, mended, each alone. */
export function editsOf(lines: readonly string[], at: number): Edit[] {
  const line = lines[at] ?? '';
  return [...indents(lines, at), ...dashes(line), ...colons(line), ...brackets(line), ...quotes(line)].filter(
    (it) => it.line !== line,
  );
}

/** The line moved by a space or two, or to where the lines around it start. */
function indents(lines: readonly string[], at: number): Edit[] {
  const line = lines[at] ?? '';
  const own = indentOf(line) ?? 0;
  const above = indentOf(lines.slice(0, at).findLast((it) => indentOf(it) !== undefined) ?? '') ?? 0;
  const below = indentOf(lines.slice(at + 1).find((it) => indentOf(it) !== undefined) ?? '') ?? 0;
  const targets = new Set([own - 2, own - 1, own + 1, own + 2, above, above + 2, above - 2, below, below - 2]);
  return [...targets]
    .filter((it) => it >= 0 && it !== own)
    .map((it) => {
      const by = Math.abs(it - own);
      const spaces = by === 1 ? 'one space' : `${by} spaces`;
      return {
        line: ' '.repeat(it) + line.trimStart(),
        hint:
          it < own ? `take ${spaces} away at the start of this line` : `put ${spaces} more at the start of this line`,
        // Most files keep to steps of two; where two lines of a block could both be the odd one, that tells which.
        cost: by / 10 + (it - parentOf(lines, at, it) === 2 || it === 0 ? 0 : 1.5),
      };
    });
}

/** Where the nearest line above starts that starts further left. */
function parentOf(lines: readonly string[], at: number, own: number): number {
  const parent = lines.slice(0, at).findLast((it) => (indentOf(it) ?? own) < own);
  return indentOf(parent ?? '') ?? 0;
}

function dashes(line: string): Edit[] {
  const hint = 'start each entry of a list with a dash and a space';
  const own = indentOf(line) ?? 0;
  const rest = line.trimStart();
  const edits: Edit[] = [];
  if (/^-[^\s-]/.test(rest)) edits.push({ line: line.replace('-', '- '), hint, cost: 0.1 });
  if (!rest.startsWith('-')) {
    edits.push({ line: `${' '.repeat(own)}- ${rest}`, hint, cost: 0.5 });
    if (own >= 2) edits.push({ line: `${' '.repeat(own - 2)}- ${rest}`, hint, cost: 0.4 });
  }
  if (/^- ./.test(rest)) {
    const noDash = 'no dash is wanted here: this is no entry of a list';
    edits.push({ line: line.replace('- ', '  '), hint: noDash, cost: 0.6 });
    edits.push({ line: line.replace('- ', ''), hint: noDash, cost: 0.6 });
  }
  return edits;
}

function colons(line: string): Edit[] {
  const edits: Edit[] = [];
  const space = 'put a space after the colon';
  for (const { index } of line.matchAll(/[A-Za-z]:(?=[^\s/])/g)) {
    edits.push({ line: `${line.slice(0, index + 2)} ${line.slice(index + 2)}`, hint: space, cost: 0.1 });
  }
  for (const { index, 0: name } of line.matchAll(/(?<=[{,]\s*)[A-Za-z]+(?= +[^\s:])/g)) {
    const at = index + name.length;
    const hint = `put a colon after "${name}"`;
    edits.push({ line: `${line.slice(0, at)}:${line.slice(at)}`, hint, cost: 0.4 });
  }
  const bare = /^(\s*(?:- )?(?:\{ )?[A-Za-z]+)(?= |$)/.exec(line)?.[1];
  if (bare) {
    const colon = 'put a colon after the field’s name';
    edits.push({ line: `${bare}:${line.slice(bare.length)}`, hint: colon, cost: 0.4 });
  }
  return edits;
}

function brackets(line: string): Edit[] {
  const edits: Edit[] = [];
  const [code = '', comment = ''] = splitComment(line);
  const open = code.split(/[[{]/).length - code.split(/[\]}]/).length;
  if (open > 0) {
    for (const sign of [']', ' }', ']]', '] }', ' }]']) {
      const hint = `a closing ${sign.trim()} is missing`;
      const cost = 0.2 + sign.length / 10;
      edits.push({ line: `${code}${sign}${comment}`, hint, cost });
      edits.push({ line: `${code.slice(0, -1)}${sign}${code.slice(-1)}${comment}`, hint, cost: cost + 0.1 });
    }
  }
  if (open < 0) {
    const sign = code.at(-1) ?? '';
    edits.push({ line: `${code.slice(0, -1)}${comment}`, hint: `a ${sign} too many stands at the end`, cost: 0.6 });
    const opening = { ']': '[', '}': '{ ' }[sign];
    const hint = `an opening ${opening?.trim()} is missing`;
    for (const start of [/^(\s*(?:- )?[A-Za-z]+: +)(.*)$/, /^(\s*- )(.*)$/]) {
      const [, before, after] = start.exec(code) ?? [];
      if (opening && before) edits.push({ line: `${before}${opening}${after}${comment}`, hint, cost: 0.4 });
    }
  }
  for (const { index } of code.matchAll(/\w[\]}]?(?= +[A-Za-z]+:)/g)) {
    const cut = index + (/[\]}]/.test(code[index + 1] ?? '') ? 2 : 1);
    edits.push({ line: `${code.slice(0, cut)},${code.slice(cut)}${comment}`, hint: 'a comma is missing', cost: 0.3 });
  }
  return edits;
}

function quotes(line: string): Edit[] {
  const edits: Edit[] = [];
  for (const sign of ["'", '"']) {
    if (line.split(sign).length % 2 === 1) continue;
    const hint = `a closing ${sign} is missing`;
    edits.push({ line: line + sign, hint, cost: 0.2 });
    for (const { index } of line.matchAll(/(?=\s*[,}\]])/g)) {
      edits.push({ line: `${line.slice(0, index)}${sign}${line.slice(index)}`, hint, cost: 0.3 });
    }
  }
  const value = /^(\s*(?:- )?[A-Za-z]+: +)([^'"[{|>].*)$/.exec(line);
  if (value?.[2] && /[:#*&!%@`]/.test(value[2])) {
    const quoted = `'${value[2].replaceAll("'", "''")}'`;
    const hint = /^[*&]/.test(value[2])
      ? 'a text that starts with * or & needs quotes'
      : value[2].includes(': ')
        ? 'a text with ": " in it needs quotes'
        : 'this text needs quotes: it holds a sign that YAML has a use for';
    edits.push({ line: `${value[1]}${quoted}`, hint, cost: 0.2 });
  }
  return edits;
}

/** A line's text without the comment at its end, and that comment with the spaces before it. */
function splitComment(line: string): [string, string] {
  const at = /\s+#[^'"\]}]*$|\s+$/.exec(line)?.index ?? line.length;
  return [line.slice(0, at), line.slice(at)];
}

/** All tabs at the start of lines made spaces, in the widths that editors use, or as the line above has it. */
export function withoutTabs(lines: readonly string[]): Array<{ at: number; edit: Edit; lines: string[] }> {
  const at = lines.findIndex((it) => /^ *\t\s*[^\s#]/.test(it));
  if (at < 0) return [];
  const count = lines.filter((it) => /^ *\t\s*[^\s#]/.test(it)).length;
  const hint = `indent with spaces, not with tabs${count > 1 ? ` (${count} lines have tabs, this one first)` : ''}`;
  const own = (i: number) => lines.slice(0, i).findLast((it) => indentOf(it) !== undefined) ?? '';
  const widths: Array<(tabs: number, i: number) => number> = [
    (tabs) => 2 * tabs,
    (tabs) => 4 * tabs,
    (tabs) => 8 * tabs,
    (_, i) => indentOf(own(i)) ?? 0,
    (_, i) => (indentOf(own(i)) ?? 0) + 2,
    (_, i) => Math.max(0, (indentOf(own(i)) ?? 0) - 2),
    () => 0,
  ];
  return widths.map((width, i) => ({
    at,
    edit: { line: '', hint, cost: i / 100 },
    lines: lines.map((line, n) =>
      line.replace(/^[ \t]+/, (start) => {
        const tabs = start.split('\t').length - 1;
        return tabs === 0 ? start : ' '.repeat(width(tabs, n) + start.replaceAll('\t', '').length);
      }),
    ),
  }));
}
