import { UsageError } from '../../content/read/usage-error.ts';
import { nearest } from '../../content/schema/suggest.ts';
import type { Terminal } from './terminal.ts';
import { wrapped } from './wrap.ts';

/** Something in what a command was given that is often a slip of the hand, and may still be meant. */
export interface Slip {
  /** Its name on the command line. */
  id: string;
  /** The entry that it is in: a row of a file. Undefined where there is one entry alone, which can't be left out. */
  entry: string | undefined;
  /** What is odd, in a sentence. */
  text: string;
  /** What a yes does: `Replace it?`. Undefined where it can only be left out. */
  offer: string | undefined;
  /** Slips of this kind are asked about once, with this question. */
  together?: string;
}

/** What was decided of slips: written all the same, or left out. */
export type Answer = 'accept' | 'skip';

/** What the command line says of slips, by their names. */
export interface Given {
  accept: readonly string[];
  skip: readonly string[];
}

/**
 * The names that an option was given, one or several with commas.
 *
 * @throws UsageError for a name that is none
 */
export function slipNames(option: string, ids: readonly string[]): (value: string, before?: string[]) => string[] {
  return (value, before = []) => {
    const names = value.split(',').map((it) => it.trim());
    for (const name of names) {
      if (ids.includes(name)) continue;
      const near = nearest(name, ids);
      throw new UsageError(
        `${option} ${name}: there is no such slip${near ? `; did you mean ${near}?` : '.'} One of: ${ids.join(', ')}.`,
      );
    }
    return [...before, ...names];
  };
}

/** A slip is known again by all that there is to it: an answer is to what was shown. */
export const keyOf = ({ id, entry, text }: Slip) => [id, entry, text].join('\n');

/**
 * Decides on slips: by the command line, or by asking.
 *
 * @param answers filled with what was decided, by `keyOf`; what stands in it is not asked again
 * @returns slips that nobody has decided on: without a terminal, or answered with neither
 */
export async function decide(
  slips: readonly Slip[],
  given: Given,
  answers: Map<string, Answer>,
  { say, ask }: Terminal,
): Promise<Slip[]> {
  for (const slip of slips) {
    const byName = answerGiven(slip, given);
    if (byName && !answers.has(keyOf(slip))) answers.set(keyOf(slip), byName);
  }
  const open = slips.filter((it) => !answers.has(keyOf(it)));
  if (!ask) return open;
  // All that is odd in one entry is one question; what is asked of many at once comes last.
  const inTurn = open.toSorted((a, b) => Number(a.together !== undefined) - Number(b.together !== undefined));
  for (const group of Map.groupBy(inTurn, (it) => (it.together ? it.id : `entry ${it.entry}`)).values()) {
    for (const { text } of group) say(wrapped(text, 2));
    const answer = await answerTo(group, ask);
    if (!answer) return group;
    for (const it of group) answers.set(keyOf(it), answer);
  }
  return [];
}

function answerGiven({ id, entry, offer }: Slip, { accept, skip }: Given): Answer | undefined {
  if (entry !== undefined && skip.includes(id)) return 'skip';
  return offer !== undefined && accept.includes(id) ? 'accept' : undefined;
}

async function answerTo(group: readonly Slip[], ask: NonNullable<Terminal['ask']>): Promise<Answer | undefined> {
  const canAccept = group.every((it) => it.offer !== undefined);
  const canSkip = group.every((it) => it.entry !== undefined);
  const entries = new Set(group.map((it) => it.entry)).size;
  const them = entries > 1 ? 'them' : 'it';
  const offers = new Set(group.map((it) => it.offer));
  const question = group[0]?.together ?? (offers.size === 1 ? group[0]?.offer : 'Write it all the same?');
  const choices = [...(canAccept ? ['y = yes'] : []), ...(canSkip ? [`l = leave ${them} out`] : []), 'n = stop'];
  const said = await ask(`  ${canAccept ? question : `Leave ${them} out?`} (${choices.join(', ')}) `);
  if (canAccept && /^y(es)?$/i.test(said)) return 'accept';
  if (canSkip && /^l(eave)?$/i.test(said)) return 'skip';
  return undefined;
}

/**
 * Slips that nobody has decided on, by their kind, and what to add to the command for each kind.
 *
 * @param meanings what each kind is, by its name
 */
export function slipList(slips: readonly Slip[], meanings: Readonly<Record<string, string>>): string {
  const kinds = Map.groupBy(slips, (it) => it.id);
  const blocks = [...kinds].map(([id, group]) =>
    [wrapped(`${id}  ${meanings[id] ?? ''}`), ...group.map(({ text }) => wrapped(text, 2))].join('\n'),
  );
  const names = (which: readonly Slip[]) => [...new Set(which.map((it) => it.id))].join(',');
  const [accepted, skipped] = [
    names(slips.filter((it) => it.offer)),
    names(slips.filter((it) => it.entry !== undefined)),
  ];
  return [
    ...blocks,
    [
      ...(accepted ? [`Where that is meant, add  --accept ${accepted}`] : []),
      ...(skipped ? [`To leave them out, add    --skip ${skipped}`] : []),
    ].join('\n'),
  ].join('\n\n');
}
