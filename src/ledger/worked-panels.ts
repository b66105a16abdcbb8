import type { Content, Entry } from '../content/read/content.ts';
import type { Panel } from '../content/schema/panel.ts';
import { roomsKey } from './checked-readings.ts';
import { compactFigures } from './compact-figures.ts';
import { keptFound } from './files/kept-found.ts';
import { panelContext } from './panel-context.ts';
import { panelEntry, type SinglePanel } from './panel-entry.ts';
import { workedLights } from './worked-lights.ts';

/** Works out panels, each by itself. */
export function workedPanels(panels: ReadonlyArray<Entry<Panel>>, content: Content, today: string): SinglePanel[] {
  const contexts = panels.map((panel) => panelContext(panel, content, today, keptFound));
  const lights = workedLights(contexts);
  return contexts.map((context) => {
    const panel = panelEntry(context, lights);
    compactFigures(panel);
    return panel;
  });
}

/** Panels from one working out to the next. */
export interface KeptPanels {
  /** The same as `workedPanels`; panels that nothing has changed for are the very same objects as before. */
  work(panels: ReadonlyArray<Entry<Panel>>, content: Content, today: string): SinglePanel[];
}

/** Parts of the content that no panel's figures rest on, or that each panel has of its own. */
const NOT_SHARED: ReadonlySet<string> = new Set<keyof Content>([
  'panels',
  'photos',
  'benchFiles',
  'methods',
  'cautions',
  'others',
  'corrections',
  'unfinished',
]);

/**
 * Keeps panels whose file is the same as it was, as long as all else that figures rest on is: guide, makers, instruments,
 * the day, and the rooms of all sessions. It goes by the identity of entries, and so by the bytes of files where these are
 * read with `keptFiles`.
 */
export function keptPanels(): KeptPanels {
  let shared: readonly unknown[] = [];
  let known = new Map<string, { entry: Entry<Panel>; beside: string; single: SinglePanel }>();
  return {
    work(panels, content, today) {
      const now = sharedBy(content, today);
      if (now.length !== shared.length || now.some((it, i) => it !== shared[i])) known = new Map();
      shared = now;
      const wanted = panels.map((entry) => ({ entry, beside: besideKey(content, entry.id) }));
      const isKept = ({ entry, beside }: (typeof wanted)[number]) => {
        const before = known.get(entry.id);
        return before?.entry === entry && before.beside === beside;
      };
      const missing = wanted.filter((it) => !isKept(it)).map((it) => it.entry);
      const made = new Map(workedPanels(missing, content, today).map((it) => [it.slug, it]));
      known = new Map(
        wanted.flatMap((it) => {
          const single = made.get(it.entry.id) ?? known.get(it.entry.id)?.single;
          return single ? [[it.entry.id, { ...it, single }]] : [];
        }),
      );
      return [...known.values()].map((it) => it.single);
    },
  };
}

/** Whatever panels share, by identity: every entry of every other part of the content, known here or not. */
function sharedBy(content: Content, today: string): unknown[] {
  const parts = Object.entries(content).filter(([name]) => !NOT_SHARED.has(name));
  return [
    today,
    roomsKey(content),
    ...parts.flatMap(([, part]) => (part instanceof Map ? [...part.values()] : [part])),
  ];
}

/** Stands for what lies beside a panel's file: photos, and files of the bench. */
function besideKey({ photos, benchFiles }: Content, slug: string): string {
  const own = photos.get(slug);
  const files = benchFiles.get(slug);
  return JSON.stringify([
    own && [[...own.listed], own.unnamed],
    files && [files.read.map(({ name, sha256 }) => [name, sha256]), files.unnamed],
  ]);
}
