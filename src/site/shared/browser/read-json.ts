/**
 * Reads a data file of the guide.
 *
 * @param name what the file holds, for the error
 * @throws where the server has no such file, or it is no JSON
 */
export async function readJson<T>(path: string, name: string): Promise<T> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${name} could not be read (${response.status})`);
  return await response.json();
}
