/** A panel's file as the site hands it to the pad. */
import type { BenchPanelFile, BenchSetup } from '../bench-data.ts';
import type { BenchStore } from '../bench-store.ts';

const keptName = (slug: string) => `panel file ${slug}`;

/**
 * A panel's file from the site; with the network off as the site had it when it was asked for last. Of a panel that the
 * guide does not have there is none.
 *
 * @throws Error where neither the site nor this device has it
 */
export async function panelFile(
  { panels }: BenchSetup,
  store: BenchStore,
  slug: string,
): Promise<BenchPanelFile | undefined> {
  const address = panels.find((it) => it.slug === slug)?.address;
  if (address === undefined) return undefined;
  try {
    const response = await fetch(address);
    if (!response.ok) throw new Error(`it could not be read (${response.status})`);
    const file = (await response.json()) as BenchPanelFile;
    await store.keep(keptName(slug), file);
    return file;
  } catch (error) {
    const kept = (await store.kept(keptName(slug))) as BenchPanelFile | undefined;
    if (kept) return kept;
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(
      `The guide’s file of this panel is not on the device: ${why}. Open the pad once with the network on.`,
    );
  }
}
