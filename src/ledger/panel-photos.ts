import type { PanelPhotos } from '../content/read/listed-photos.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { Photo } from './ledger.ts';

/** A panel's photos, in the tester's order: its own, then those of its sessions, the newest session first. */
export function panelPhotos({ photos, sessions }: Panel, files: PanelPhotos | undefined): Photo[] {
  const listed = [
    ...photos.map((it) => ({ ...it, date: undefined })),
    ...sessions
      .toSorted((a, b) => b.date.localeCompare(a.date))
      .flatMap(({ date, photos: taken }) => taken.map((it) => ({ ...it, date }))),
  ];
  return listed.map(({ file: name, shows, by, date }) => {
    const file = files?.listed.get(name);
    if (!file) throw new Error(`the photo "${name}" was let through without its file`);
    return { name, file, shows, by, date };
  });
}
