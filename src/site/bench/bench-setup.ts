import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Entry } from '../../content/read/content.ts';
import { isBlock, valueAt } from '../../content/schema/block.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import { FIELDS } from '../../measure/checks/index.ts';
import type { BenchFile, BenchPanel, BenchPanelFile, BenchRoom, BenchSetup } from './browser/bench-data.ts';

/** Who the bench's files are made for. */
export interface BenchReader {
  /** Stands for all code and libraries. */
  code: string;
  /** Nobody but the tester can load them: panels' files stand in them byte by byte, sessions that are drafts too. */
  isTester: boolean;
}

/** `/data/bench.json`: what the pad needs of the guide, drafts left out where readers could load it. */
export function benchSetup(loaded: Loaded, reader: BenchReader): BenchSetup {
  const { content, ledger } = loaded;
  const all = {
    guide: fileOf(content.guide),
    instruments: [...content.instruments.values()].map(fileOf),
    standards: [...content.standards.values()].map(fileOf),
    makers: [...content.makers.values()].map(fileOf),
    panels: [...ledger.panels.keys()].map((slug) => panelOf(loaded, slug)),
    rooms: roomsOf(loaded),
  };
  // Old scripts never work on new data, nor the other way round.
  const hash = createHash('sha256').update(reader.code).update(JSON.stringify(all));
  for (const slug of ledger.panels.keys()) hash.update(JSON.stringify(benchPanelFile(loaded, slug, reader)));
  return { format: 1, version: hash.digest('hex').slice(0, 12), today: ledger.today, ...all };
}

/** `/data/bench/<slug>.json`: a panel's file as data; for the tester's own eyes also as it lies on the disk. */
export function benchPanelFile({ content }: Loaded, slug: string, { isTester }: BenchReader): BenchPanelFile {
  const entry = content.panels.get(slug);
  if (!entry) throw new Error(`${slug}: no such panel was read`);
  const file = fileOf(entry);
  if (isTester) return { ...file, text: readFileSync(entry.source.path, 'utf8') };
  const data = isBlock(file.data) ? file.data : {};
  const sessions = Array.isArray(data.sessions) ? data.sessions : [];
  return { ...file, data: { ...data, sessions: sessions.filter((it) => valueAt(it, ['draft']) !== true) } };
}

/** Its name from the content folder on: where that lies on the tester's machine is nobody's business. */
function fileOf({ id, source }: Entry<unknown>): BenchFile {
  const parts = source.file.split('/');
  const depth = id === 'guide' && parts.at(-1) === 'guide.yaml' ? 1 : parts.at(-1)?.startsWith('index.md') ? 3 : 2;
  return { id, file: `content/${parts.slice(-depth).join('/')}`, data: source.data };
}

function panelOf({ content, ledger }: Loaded, slug: string): BenchPanel {
  const [entry, panel] = [content.panels.get(slug), ledger.panels.get(slug)];
  if (!entry || !panel) throw new Error(`${slug}: no such panel was read`);
  const { data, name } = panel;
  const sides = (['width', 'height'] as const).map((side) => valueAt(entry.source.data, ['field', side]));
  return {
    slug,
    name,
    maker: data.maker,
    model: data.model,
    formerly: data.formerly ?? [],
    status: data.status,
    file: fileOf(entry).file,
    ...(data.field && { field: { width: String(sides[0]), height: String(sides[1]) } }),
    sessions: panel.sessions.map((it) => it.date),
    address: `/data/bench/${slug}.json`,
  };
}

/** What all sessions have read of their rooms: a panel's flags hold its own against them. */
function roomsOf({ content, ledger }: Loaded): BenchRoom[] {
  return [...content.panels.values()].flatMap(({ id, data }) =>
    data.sessions.flatMap((session): BenchRoom[] => {
      const off = FIELDS.flatMap((kind) => {
        const reading = session[kind]?.off;
        return reading && !reading.bound ? [[kind, reading.value] as const] : [];
      });
      return off.length > 0 ? [{ panel: ledger.panels.has(id) ? id : '', off: Object.fromEntries(off) }] : [];
    }),
  );
}
