import { inSite } from './site-path.ts';

/** What every data file of the guide says of itself; it goes up when a field changes its meaning or goes. */
export interface Formatted {
  format: number;
}

/**
 * A file that is of another form than the page reads: the page was loaded before the guide was built anew, or is kept
 * by the browser. The message is for readers, within a sentence.
 */
export class OtherFormat extends Error {
  override name = 'OtherFormat';
}

/**
 * Reads a data file of the guide.
 *
 * @param name what the file holds, for the error: `the panels`
 * @param format of the file that the page can read; what the file holds besides is taken to be of that format
 * @throws OtherFormat where the file says another
 * @throws Error where the server has no such file, or it is no JSON
 */
export async function readJson<T extends Formatted>(path: string, name: string, format: T['format']): Promise<T> {
  const response = await fetch(inSite(path));
  if (!response.ok) throw new Error(`${name} could not be read (${response.status})`);
  const file: T | null = await response.json();
  if (file?.format === format) return file;
  throw new OtherFormat(`${name} are of another version of the guide than this page, so load the page again`);
}
