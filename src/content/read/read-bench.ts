import { existsSync, globSync } from 'node:fs';
import { join } from 'node:path';
import { COLLECTIONS, entryId } from '../schema/collections.ts';
import type { Guide } from '../schema/guide.ts';
import type { InstrumentFile } from '../schema/instrument.ts';
import type { Maker } from '../schema/maker.ts';
import { readYaml } from './read-source.ts';

/** What a new file can take from a content folder. */
export interface Bench {
  /** Undefined where its file is not there or has a problem. */
  guide: Guide | undefined;
  /** Those without a problem. */
  instruments: ReadonlyMap<string, InstrumentFile>;
  makers: ReadonlyMap<string, Maker>;
  /** Names that are taken, whatever the files say. */
  taken: Readonly<Record<'panels' | 'instruments' | 'makers', ReadonlySet<string>>>;
}

/** Reads what is there, file by file: a problem in one of them is no reason not to begin another. */
export function readBench(folder: string): Bench {
  const files = (name: 'guide' | 'instruments' | 'makers') => globSync(COLLECTIONS[name].pattern, { cwd: folder });
  const entries = <T>(name: 'guide' | 'instruments' | 'makers', read: (data: unknown) => T | undefined) =>
    new Map(
      files(name).flatMap((path) => {
        const { source, problems } = readYaml(join(folder, path), path, COLLECTIONS[name].schema);
        const entry = source && problems.length === 0 && !source.unfinished ? read(source.data) : undefined;
        return entry ? [[entryId(path), entry] as const] : [];
      }),
    );
  return {
    guide: entries('guide', (data) => COLLECTIONS.guide.schema.safeParse(data).data).get('guide'),
    instruments: entries('instruments', (data) => COLLECTIONS.instruments.schema.safeParse(data).data),
    makers: entries('makers', (data) => COLLECTIONS.makers.schema.safeParse(data).data),
    taken: {
      panels: new Set(existsSync(join(folder, 'panels')) ? globSync('*', { cwd: join(folder, 'panels') }) : []),
      instruments: new Set(files('instruments').map(entryId)),
      makers: new Set(files('makers').map(entryId)),
    },
  };
}
