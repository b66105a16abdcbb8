import { madeOf } from '../../ledger/files/file-maker.ts';
import type { PanelEntry } from '../../ledger/ledger.ts';
import { soundInShort } from '../files/sound-words.ts';
import { filesAddress } from '../shared/file-addresses.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';

/** What a photo of the wall and sound clips say, in a line each; nothing for panels without. */
export interface FoundInFiles {
  wall?: { lowest: ShownFigure; address: string };
  sound?: { text: string; address: string };
}

/** What stands on a panel's page of its current session's files. */
export function foundInFiles(panel: PanelEntry, currency: string): FoundInFiles {
  const { current } = panel;
  if (!current) return {};
  const address = (part: string) => `${filesAddress(panel.slug)}#${part}-${current.date}`;
  const sound = madeOf(current.made, 'soundClips')?.view;
  const text = sound && soundInShort(sound);
  const metric = 'wall-lowest-to-mean';
  return {
    ...(current.made.has('wallPhoto') && {
      wall: { lowest: shownFigure(panel, panel.figures.get(metric), metric, currency), address: address('wall') },
    }),
    ...(text && { sound: { text, address: address('clips') } }),
  };
}
