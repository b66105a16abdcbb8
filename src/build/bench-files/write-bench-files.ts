import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Ledger } from '../../ledger/ledger.ts';
import { closeFiles } from '../../site/files/close-plots.ts';
import { fileAddress } from '../../site/shared/file-addresses.ts';
import { forgetOld, noteUse } from '../forget-old.ts';
import { wallPictureFile, wallPictures, wallStore } from './wall-pictures.ts';

/** A file from the bench that readers can download. */
interface Download {
  address: string;
  path: string;
}

/** All of them, each once: what a session carries over is named by the session that it comes from. */
export function downloads({ panels }: Ledger): Download[] {
  return [...panels.values()].flatMap(({ slug, sessions }) => {
    const all = sessions.flatMap(({ files }) => files);
    return [...new Map(all.map((it) => [fileAddress(slug, it), it.path]))].map(([address, path]) => ({
      address,
      path,
    }));
  });
}

/** Lays them into the output, byte for byte, and beside them what is drawn of photos of the wall and what plots are made of. */
export async function writeBenchFiles(ledger: Ledger, folder: string): Promise<void> {
  for (const { address, path } of downloads(ledger)) {
    const target = join(folder, decodeURIComponent(address));
    await mkdir(dirname(target), { recursive: true });
    await copyFile(path, target);
  }
  for (const picture of wallPictures(ledger)) {
    const target = join(folder, picture.address);
    await mkdir(dirname(target), { recursive: true });
    const kept = wallPictureFile(picture);
    await copyFile(kept, target);
    noteUse(kept);
  }
  forgetOld(wallStore());
  for (const panel of ledger.panels.values()) {
    for (const { address, plot } of closeFiles(panel)) {
      const target = join(folder, address);
      await mkdir(dirname(target), { recursive: true });
      await writeFile(target, JSON.stringify(plot()));
    }
  }
}
