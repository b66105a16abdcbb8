import { UsageError } from '../../content/read/usage-error.ts';
import { slugOf } from '../../content/templates/file-name.ts';

/**
 * The name of a new file.
 *
 * @param what in words: a panel
 * @throws UsageError where it is taken, with one that is not, or where nothing is left of it in an address
 */
export function freeName(name: string, taken: ReadonlySet<string>, what: string): string {
  const slug = slugOf(name);
  if (slug === '') {
    throw new UsageError(`"${name}" has no letter or digit that can stand in an address; give ${what} another name.`);
  }
  if (!taken.has(slug)) return slug;
  let number = 2;
  while (taken.has(`${slug}-${number}`)) number++;
  throw new UsageError(
    `There is ${what} "${slug}" already; nothing was written.\nFor another one, a name of its own: ${slug}-${number}`,
  );
}
