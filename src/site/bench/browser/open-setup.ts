/** The guide's data as the reader of content would have it from the disk. */
import type { Content, Entry } from '../../../content/read/content.ts';
import { parseSource } from '../../../content/read/parse-source.ts';
import { perSource } from '../../../content/read/per-source.ts';
import type { Source } from '../../../content/read/source.ts';
import type { RawCollections } from '../../../content/rules/rule.ts';
import { guideSchema } from '../../../content/schema/guide.ts';
import { instrumentSchema } from '../../../content/schema/instrument.ts';
import { makerSchema } from '../../../content/schema/maker.ts';
import type { Session } from '../../../content/schema/session.ts';
import { standardSchema } from '../../../content/schema/standard.ts';
import type { BenchFile, BenchRoom, BenchSetup } from './bench-data.ts';

/** Everything of the guide but its panels. */
export interface OpenSetup {
  raw: Pick<RawCollections, 'guide' | 'instruments' | 'standards' | 'makers'>;
  entries: Pick<Content, 'guide' | 'instruments' | 'standards' | 'makers'>;
}

/**
 * Takes the guide's data apart, once for each.
 *
 * @throws where it is not what a build writes
 */
export const openSetup = perSource((setup: BenchSetup): OpenSetup => {
  const raw = {
    guide: sourcesOf([setup.guide]),
    instruments: sourcesOf(setup.instruments),
    standards: sourcesOf(setup.standards),
    makers: sourcesOf(setup.makers),
  };
  const guide = entriesOf(guideSchema, raw.guide).get('guide');
  if (!guide) throw new Error('the data of the bench has no guide');
  return {
    raw,
    entries: {
      guide,
      instruments: entriesOf(instrumentSchema, raw.instruments),
      standards: entriesOf(standardSchema, raw.standards),
      makers: entriesOf(makerSchema, raw.makers),
    },
  };
});

/** A file that was read when the guide was built; where in it something stands, only the tester's disk knows. */
export function sourceOf({ file, data }: BenchFile): Source {
  return { path: file, file, data, yaml: '', yamlLine: 1, body: '', bodyLine: 1, lineOf: () => 1 };
}

const sourcesOf = (files: readonly BenchFile[]) => new Map(files.map((it) => [it.id, sourceOf(it)]));

function entriesOf<T>(schema: Parameters<typeof parseSource<T>>[0], sources: ReadonlyMap<string, Source>) {
  return new Map(
    [...sources].flatMap(([id, source]): Array<[string, Entry<T>]> => {
      const { entry } = parseSource(schema, id, source);
      return entry ? [[id, entry]] : [];
    }),
  );
}

/** Other panels, as far as a panel is held against them: what they read of their rooms. */
export function otherRooms(rooms: readonly BenchRoom[], slug: string): Session[] {
  return rooms
    .filter((it) => it.panel !== slug)
    .map(({ off }) => {
      const fields = Object.entries(off).map(([kind, value]) => [kind, { off: { value } }]);
      return Object.fromEntries(fields) as Session;
    });
}
