/** Pictures that are made of photos of walls are kept from one build to the next, under all that they are made of. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { wallPictureFile, wallPictures, wallStore } from '../../src/build/bench-files/wall-pictures.ts';
import { writeBenchFiles } from '../../src/build/bench-files/write-bench-files.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { demoLedger } from '../support/demo-ledger.ts';

const place = vi.hoisted(() => ({ folder: '' }));
vi.mock('../../src/content/read/cache-folder.ts', () => ({ cacheFolder: () => place.folder }));

place.folder = mkdtempSync(join(tmpdir(), 'wall-pictures-'));
afterAll(() => rmSync(place.folder, { recursive: true }));

const { ledger } = demoLedger();

test('a picture is made once, and laid into the output as it was made', async () => {
  const pictures = wallPictures(ledger);
  expect(pictures.length).toBeGreaterThan(3);
  expect(new Set(pictures.map((it) => it.mark)).size).toBe(pictures.length);
  const [picture] = pictures;
  if (!picture) throw new Error('no picture');
  const bytes = vi.fn(picture.bytes);
  const file = wallPictureFile({ ...picture, bytes });
  expect(wallPictureFile({ ...picture, bytes })).toBe(file);
  expect(bytes).toHaveBeenCalledOnce();
  expect(readFileSync(file).equals(Buffer.from(picture.bytes()))).toBe(true);

  await writeBenchFiles(ledger, join(place.folder, 'site'));
  expect(readdirSync(wallStore()).length).toBe(pictures.length);
  for (const it of pictures)
    expect(readFileSync(join(place.folder, 'site', it.address)).equals(readFileSync(wallPictureFile(it)))).toBe(true);
});

test('another photo, or the same one with other corners, is another picture', () => {
  const marks = (change: (file: { sha256: string; entry: object }) => object): string[] => {
    const panels = [...ledger.panels].map(([slug, panel]) => {
      const sessions = panel.sessions.map((session) => ({
        ...session,
        files: session.files.map((it) => (it.kind === 'wallPhoto' ? { ...it, ...change(it) } : it)),
      }));
      return [slug, { ...panel, sessions }] as const;
    });
    return wallPictures({ ...ledger, panels: new Map(panels) } as Ledger).map((it) => it.mark);
  };
  const now = wallPictures(ledger).map((it) => it.mark);
  expect(marks(() => ({}))).toEqual(now);
  const others = [
    marks(({ sha256 }) => ({ sha256: sha256.replace(/./, 'x') })),
    marks(({ entry }) => ({ entry: { ...entry, corners: [] } })),
  ];
  for (const it of others) for (const mark of it) expect(now).not.toContain(mark);
});
