import { valueAt } from '../schema/block.ts';
import { COLLECTIONS, type CollectionName } from '../schema/collections.ts';
import { isOptionalAt, meaningAt } from '../schema/inspect.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument-kinds.ts';
import { fieldPath, type Problem } from '../schema/problem.ts';
import { problemAt, texts } from './fields.ts';
import { counted } from './problem-list.ts';
import type { Source } from './source.ts';

type Raw = Readonly<Record<CollectionName, ReadonlyMap<string, Source>>>;

/** What is still to be filled in where readers would miss it: anywhere but in drafts and in instruments. */
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
  const gaps = sources.find((it) => it.file === file)?.gaps ?? [];
  return gaps
    .map(({ path }) => fieldPath(path))
    .some((gap) => gap === field || gap.startsWith(`${field}.`) || gap.startsWith(`${field}[`));
}

const isDraft = ({ data }: Source) => valueAt(data, ['status']) === 'draft';

function ownGaps(name: CollectionName, source: Source): Problem[] {
  const { schema } = COLLECTIONS[name];
  return (source.gaps ?? []).map(({ path, line }) => {
    const meaning = meaningAt(schema, path)?.replace(/\.$/, '');
    const draft = name === 'panels' ? ', or write status: draft until it is' : '';
    const hint = isOptionalAt(schema, path)
      ? 'leave the field out: what was not read is left out'
      : `fill it in${draft}`;
    return {
      file: source.file,
      line,
      field: fieldPath(path),
      found: 'a gap that is still to be filled in',
      wanted: meaning ? `a value (${meaning})` : 'a value',
      hint,
    };
  });
}

/** A panel that readers see rests on no instrument whose file is half written. */
function unfinishedInstruments({ panels, instruments }: Raw): Problem[] {
  return [...panels.values()]
    .filter((it) => !isDraft(it))
    .flatMap((panel) =>
      INSTRUMENT_KINDS.flatMap((kind) =>
        texts(panel, 'sessions', '*', 'instruments', kind).flatMap((field) => {
          const instrument = instruments.get(field.value);
          const [first] = instrument?.gaps ?? [];
          if (!instrument || !first) return [];
          const wanted = `an instrument whose file is filled in; ${instrument.file} has ${counted(instrument.gaps?.length ?? 0, 'gap')}`;
          return [problemAt(panel, field, wanted, `the first is ${fieldPath(first.path)}, in line ${first.line}`)];
        }),
      ),
    );
}
