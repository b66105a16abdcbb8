import { isScalar, parseDocument } from 'yaml';
import { FORMAT } from '../schema/format.ts';
import { datedCalibrations } from './0002-dated-calibrations.ts';
import { textsOfTheProgram } from './0002-texts-of-the-program.ts';
import type { Change, ContentFiles, Migration } from './migration.ts';

/** All migrations, in the order in which they run. */
export const MIGRATIONS: readonly Migration[] = [datedCalibrations, textsOfTheProgram];

/** One file as an upgrade leaves it, and why. */
export interface Upgraded {
  path: string;
  before: string;
  /** Undefined for a file that goes. */
  after: string | undefined;
  why: readonly string[];
}

/** What brings content up to the present format. */
export interface Upgrade {
  from: number;
  /** Empty where nothing has to change. */
  files: readonly Upgraded[];
}

/** The format that guide.yaml states; 1 where it states none, or can't be read. */
export function formatOf(guide: string | undefined): number {
  const format = parseDocument(guide ?? '').get('format');
  return typeof format === 'number' ? format : 1;
}

/** Runs every migration that content has not seen, one after the other, and notes the format in guide.yaml. */
export function upgraded(files: ContentFiles): Upgrade {
  const from = formatOf(files.get('guide.yaml'));
  const now = new Map(files);
  const why = new Map<string, string[]>();
  const take = ({ path, after, why: reason }: Change) => {
    if (after === undefined) now.delete(path);
    else now.set(path, after);
    why.set(path, [...(why.get(path) ?? []), reason]);
  };
  for (const migration of MIGRATIONS) if (migration.to > from) migration.run(now).forEach(take);
  const guide = now.get('guide.yaml');
  if (from < FORMAT && guide !== undefined) {
    take({ path: 'guide.yaml', after: withFormat(guide), why: `the format of these files is ${FORMAT} now` });
  }
  return {
    from,
    files: [...why].map(([path, reasons]) => ({
      path,
      before: files.get(path) ?? '',
      after: now.get(path),
      why: reasons,
    })),
  };
}

/** The guide's text with the present format: in the place of the former one, or before the first field. */
function withFormat(text: string): string {
  const value = parseDocument(text).get('format', true);
  if (isScalar(value) && value.range) {
    return `${text.slice(0, value.range[0])}${FORMAT}${text.slice(value.range[1])}`;
  }
  return text.replace(/^(?=[A-Za-z"'])/m, `format: ${FORMAT}\n`);
}
