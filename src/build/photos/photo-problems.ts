import { problemAt, texts } from '../../content/read/fields.ts';
import { PHOTO_FILES } from '../../content/read/listed-photos.ts';
import { ContentError } from '../../content/read/problem-list.ts';
import type { Problem } from '../../content/schema/problem.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import { makePhotos, photoFaults } from './photo-store.ts';

/** The listed photos that can't be decoded, as problems at their places. */
export async function photoProblems({ content, ledger }: Loaded): Promise<Problem[]> {
  const faults = await photoFaults(ledger);
  return faults
    .flatMap(({ slug, name, found, wanted, hint }) => {
      const source = content.panels.get(slug)?.source;
      const field = source && PHOTO_FILES.flatMap((keys) => texts(source, ...keys)).find((it) => it.value === name);
      return field ? [{ ...problemAt(source, field, wanted, hint), found }] : [];
    })
    .toSorted((a, b) => a.file.localeCompare(b.file, 'en') || (a.line ?? 0) - (b.line ?? 0));
}

/**
 * Makes all pictures of all photos, before anything is built of them.
 *
 * @throws ContentError with every photo that can't be decoded
 */
export async function ensurePhotos(loaded: Loaded): Promise<void> {
  const problems = await photoProblems(loaded);
  if (problems.length > 0) throw new ContentError(problems);
  await makePhotos(loaded.ledger);
}
