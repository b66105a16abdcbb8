/** Photos whose fault only shows when they are decoded are problems too, before anything is built. */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ensurePhotos, photoProblems } from '../../src/build/photos/photo-problems.ts';
import { photoAt, writePhotos } from '../../src/build/photos/photo-store.ts';
import { ContentError } from '../../src/content/read/problem-list.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { photoVariants } from '../../src/site/shared/photo-files.ts';
import { expectProblems } from '../content/rules/expect-problems.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';
import { cameraPhoto, plainPicture } from '../support/photo-bytes.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  content.edit(PLOVER, 'weight: 9 lb\n', 'weight: 9 lb\nphotos: [{ file: a.jpg, shows: Front with its stand }]\n');
});
afterEach(() => content.delete());

function load() {
  const read = content.content();
  return { content: read, ledger: buildLedger(read, { today: TODAY }) };
}

test('a picture that breaks off, at its place', async () => {
  const whole = await plainPicture(400, 300).jpeg().toBuffer();
  content.write('panels/plover/a.jpg', whole.subarray(0, whole.length / 2));
  const loaded = load();
  expectProblems(await photoProblems(loaded), {
    file: PLOVER,
    line: content.lineOf(PLOVER, 'photos:'),
    field: 'photos[0].file',
    found: /^"a.jpg", which can’t be decoded: /,
    wanted: 'a whole picture',
    hint: 'copy it anew, or export it as JPEG or PNG',
  });
  await expect(ensurePhotos(loaded)).rejects.toThrow(ContentError);
});

test('a picture that only says of itself within that it is to be turned', async () => {
  const png = await plainPicture(400, 300).png().withMetadata({ orientation: 6 }).toBuffer();
  content.write('panels/plover/a.jpg', png);
  expectProblems(await photoProblems(load()), {
    file: PLOVER,
    line: content.lineOf(PLOVER, 'photos:'),
    field: 'photos[0].file',
    found: '"a.jpg" of 300 × 400 pixels, whose head says 400 × 300',
    wanted: 'a picture that lies as it is seen',
    hint: 'turn it in a program for pictures and save it as JPEG',
  });
});

test('a sound one is laid into the output in all its pictures, and found by their addresses', async () => {
  content.write('panels/plover/a.jpg', await cameraPhoto(330, 220));
  const loaded = load();
  await ensurePhotos(loaded);
  const out = mkdtempSync(join(tmpdir(), 'out-'));
  try {
    await writePhotos(loaded.ledger, out);
    const [photo] = loaded.ledger.panels.get('plover')?.photos ?? [];
    const variants = photo ? photoVariants('plover', photo) : [];
    expect(variants.length).toBe(6);
    for (const { address } of variants) {
      expect(existsSync(join(out, address)), address).toBe(true);
      expect(await photoAt(loaded.ledger, address)).toMatch(/^node_modules/);
    }
    expect(await photoAt(loaded.ledger, '/photos/plover/b-320.avif')).toBeUndefined();
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
});
