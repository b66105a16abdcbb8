import type { z } from 'zod';
import { valueAt } from '../schema/block.ts';
import { COLLECTIONS, type CollectionName } from '../schema/collections.ts';
import { isOptionalAt, meaningAt } from '../schema/inspect.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument-kinds.ts';
import { fieldPath, type Problem } from '../schema/problem.ts';
import { problemAt, texts } from './fields.ts';
import { counted } from './problem-list.ts';
import type { Gap, Source } from './source.ts';

type Raw = Readonly<Record<CollectionName, ReadonlyMap<string, Source>>>;

/**
 * What is still to be filled in where readers would miss it: anywhere but in drafts, in a session that is one, and in
 * instruments.
 */
export function gapProblems(content: Raw): Problem[] {
  const names = Object.keys(COLLECTIONS) as CollectionName[];
  return [
    ...names
      .filter((name) => name !== 'instruments')
      .flatMap((name) =>
        [...content[name].values()].flatMap((source) => (isDraft(source) ? [] : ownGaps(name, source))),
      ),
    ...unfinishedInstruments(content),
  ];
}

/** What is wrong around a gap is that it is not filled in. */
export function isEchoOfGap({ file, field }: Problem, sources: readonly Source[]): boolean {
  if (field === '') return false;
  const gaps = sources.find((it) => it.file === file)?.unfinished?.gaps ?? [];
  return gaps
    .map(({ path }) => fieldPath(path))
    .some((gap) => gap === field || gap.startsWith(`${field}.`) || gap.startsWith(`${field}[`));
}

const isDraft = ({ data }: Source) => valueAt(data, ['status']) === 'draft';

/** True for a gap in a session that is still being read. */
function isInDraftSession(kept: unknown, [list, place = '']: Gap['path']): boolean {
  return list === 'sessions' && valueAt(kept, [list, place, 'draft']) === true;
}

function ownGaps(name: CollectionName, { file, unfinished }: Source): Problem[] {
  const { schema } = COLLECTIONS[name];
  const shown = (unfinished?.gaps ?? []).filter((it) => !isInDraftSession(unfinished?.kept, it.path));
  return [...Map.groupBy(shown, (it) => it.line)].map(([line, gaps]) => {
    const paths = gaps.map((it) => it.path);
    const isLeftOut = paths.every((path) => isOptionalAt(schema, path));
    const draft = name === 'panels' ? ', or write status: draft until it is' : '';
    return {
      file,
      line,
      field: fieldPath(shared(paths)),
      found: paths.length === 1 ? 'a gap that is still to be filled in' : `${paths.length} gaps still to be filled in`,
      wanted: paths.map((path) => wantedAt(schema, path)).join('; '),
      hint: isLeftOut ? 'leave out what was not read' : `fill it in${draft}`,
    };
  });
}

function wantedAt(schema: z.ZodType, path: Gap['path']): string {
  const meaning = meaningAt(schema, path)?.replace(/\.$/, '');
  const name = path.findLast((it) => typeof it === 'string');
  return meaning ? `${String(name)} (${meaning})` : String(name);
}

/** The path that some paths have in common. */
function shared(paths: ReadonlyArray<Gap['path']>): Gap['path'] {
  const [first = []] = paths;
  const end = first.findIndex((part, i) => paths.some((it) => it[i] !== part));
  return end < 0 ? first : first.slice(0, end);
}

/** A panel that readers see rests on no instrument whose file is half written. */
function unfinishedInstruments({ panels, instruments }: Raw): Problem[] {
  return [...panels.values()]
    .filter((it) => !isDraft(it))
    .flatMap((panel) =>
      INSTRUMENT_KINDS.flatMap((kind) =>
        texts(panel, 'sessions', '*', 'instruments', kind).flatMap((field) => {
          const instrument = instruments.get(field.value);
          const gaps = instrument?.unfinished?.gaps ?? [];
          const [first] = gaps;
          if (!instrument || !first) return [];
          const wanted = `an instrument whose file is filled in; ${instrument.file} has ${counted(gaps.length, 'gap')}`;
          return [problemAt(panel, field, wanted, `the first is ${fieldPath(first.path)}, in line ${first.line}`)];
        }),
      ),
    );
}
