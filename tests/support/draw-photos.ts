/**
 * Draws the pictures of the demonstration's invented panels, since there is nothing to photograph: fronts to the sizes in
 * the panels' files, beside a rule of one metre, and what one of them would throw on a wall. Run it after a change of
 * the drawings: `npx node tests/support/draw-photos.ts`. It writes them beside the panels in content/ and in the tests'
 * demonstration.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { readFrontMatter } from '../../src/content/read/read-source.ts';
import { type Panel, panelSchema } from '../../src/content/schema/panel.ts';
import { type DrawnPanel, deskScene, floorScene } from './photo-scenes.ts';
import { wallGlow } from './wall-glow.ts';

const FOLDERS = ['content/panels', 'tests/demo/content/panels'];

const panelOf = (slug: string, ending = 'md'): Panel => {
  const path = `tests/demo/content/panels/${slug}/index.${ending}`;
  const { source } = readFrontMatter(path, path, panelSchema);
  return panelSchema.parse(source?.data);
};

const size = (it: Panel['field']) => {
  if (!it) throw new Error('a panel without its sizes can’t be drawn');
  return { width: it.width.value, height: it.height.value };
};

/** What is drawn of a panel.
 *
 * @param leds columns and rows, where the file does not count them */
function drawn(panel: Panel, leds: { columns: number; rows: number }): DrawnPanel {
  const field = size(panel.field);
  const { columns, rows } = panel.leds ?? leds;
  const housing = panel.housing ? size(panel.housing) : { width: field.width + 3, height: field.height + 3 };
  return { field, housing, columns, rows };
}

async function save(slug: string, name: string, image: Sharp): Promise<void> {
  const format = name.split('.').at(-1);
  const packed =
    format === 'png'
      ? image.png({ palette: true, colours: 64, effort: 10 })
      : format === 'webp'
        ? image.webp({ quality: 72, effort: 6 })
        : image.jpeg({ quality: 70, mozjpeg: true });
  const bytes = await packed.toBuffer();
  for (const folder of FOLDERS) {
    const path = `${folder}/${slug}/${name}`;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, bytes);
  }
  console.log(`${slug}/${name}: ${(bytes.length / 1000).toFixed(0)} kB`);
}

const svg = (text: string) => sharp(Buffer.from(text));

const gannet = drawn(panelOf('kelpwright-gannet', 'mdx'), { columns: 12, rows: 32 });
await save('kelpwright-gannet', 'front.jpg', svg(floorScene(gannet, { above: 8, feet: 'board' })));
await save('kelpwright-gannet', 'wall-at-6-in.jpg', wallGlow(gannet, { distance: 15.24, halfAngle: 22.5 }));
await save(
  'fennimarsh-sedge',
  'on-its-stand.webp',
  svg(floorScene(drawn(panelOf('fennimarsh-sedge'), { columns: 8, rows: 27 }), { above: 42, feet: 'wheels' })),
);
await save(
  'ostrel-lill',
  'on-the-desk.png',
  svg(deskScene(drawn(panelOf('ostrel-lill'), { columns: 6, rows: 7 }), { handle: false })),
);
await save(
  'quennick-dab',
  'on-the-table.jpg',
  svg(deskScene(drawn(panelOf('quennick-dab'), { columns: 6, rows: 6 }), { handle: true })),
);
