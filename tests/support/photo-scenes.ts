/** Rooms with an invented panel in them, as SVG: ink on paper, everything to one scale. */

interface Sides {
  width: number;
  height: number;
}

/** A panel as it is drawn; lengths in cm. */
export interface DrawnPanel {
  field: Sides;
  housing: Sides;
  columns: number;
  rows: number;
}

const INK = '#23282b';
const WIDTH = 960;

const DEFS = `<defs>
<linearGradient id="wall" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="#f4efe4"/><stop offset="1" stop-color="#e2d9c7"/></linearGradient>
<linearGradient id="floor" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#b9a488"/><stop offset="1" stop-color="#d3c1a6"/></linearGradient>
<linearGradient id="case" x1="0" y1="0" x2="1" y2="0"><stop offset="0" stop-color="#4b5256"/><stop offset="0.5" stop-color="#3a4044"/><stop offset="1" stop-color="#2d3235"/></linearGradient>
<radialGradient id="red"><stop offset="0" stop-color="#fff1ec"/><stop offset="0.35" stop-color="#ff8f80"/><stop offset="0.75" stop-color="#d22b33"/><stop offset="1" stop-color="#7c1420"/></radialGradient>
<radialGradient id="dark"><stop offset="0" stop-color="#8d3a55"/><stop offset="0.6" stop-color="#4c1c30"/><stop offset="1" stop-color="#2a1420"/></radialGradient>
<filter id="far" x="-60%" y="-60%" width="220%" height="220%"><feGaussianBlur stdDeviation="46"/></filter>
<filter id="near" x="-60%" y="-60%" width="220%" height="220%"><feGaussianBlur stdDeviation="9"/></filter>
</defs>`;

const rect = (x: number, y: number, width: number, height: number, more: string) =>
  `<rect x="${x.toFixed(1)}" y="${y.toFixed(1)}" width="${width.toFixed(1)}" height="${height.toFixed(1)}" ${more}/>`;
const line = (x1: number, y1: number, x2: number, y2: number, width: number, colour = INK) =>
  `<path d="M${x1.toFixed(1)} ${y1.toFixed(1)}L${x2.toFixed(1)} ${y2.toFixed(1)}" stroke="${colour}" stroke-width="${width}" stroke-linecap="round"/>`;

/** The front, its bottom edge's middle at (x, y); red LEDs shine, those that nobody sees are dark. */
function front({ field, housing, columns, rows }: DrawnPanel, x: number, y: number, scale: number): string {
  const [w, h] = [housing.width * scale, housing.height * scale];
  const [left, top] = [x - w / 2, y - h];
  const depth = Math.min(26, 0.09 * w + 8);
  const [fw, fh] = [field.width * scale, field.height * scale];
  const [fx, fy] = [x - fw / 2, top + (h - fh) / 2];
  const [dx, dy] = [fw / columns, fh / rows];
  const radius = 0.4 * Math.min(dx, dy);
  const leds: string[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [cx, cy] = [fx + (column + 0.5) * dx, fy + (row + 0.5) * dy];
      const kind = (row + column) % 2 === 0 ? 'red' : 'dark';
      leds.push(`<circle cx="${cx.toFixed(1)}" cy="${cy.toFixed(1)}" r="${radius.toFixed(2)}" fill="url(#${kind})"/>`);
    }
  }
  return [
    rect(left - 30, top - 20, w + 60, h + 40, 'fill="#d8433f" opacity="0.34" filter="url(#far)"'),
    `<path d="M${left + w} ${top}l${depth} ${-0.5 * depth}v${h}l${-depth} ${0.5 * depth}z" fill="#1f2325" stroke="${INK}" stroke-width="3" stroke-linejoin="round"/>`,
    `<path d="M${left} ${top}l${depth} ${-0.5 * depth}h${w}l${-depth} ${0.5 * depth}z" fill="#676f73" stroke="${INK}" stroke-width="3" stroke-linejoin="round"/>`,
    rect(left, top, w, h, `rx="5" fill="url(#case)" stroke="${INK}" stroke-width="3.5"`),
    rect(fx - 4, fy - 4, fw + 8, fh + 8, 'rx="4" fill="#191315"'),
    ...leds,
    rect(fx - 4, fy - 4, fw + 8, fh + 8, 'rx="4" fill="#ff5a50" opacity="0.1"'),
  ].join('');
}

/** A rule standing on (x, y), with a mark each centimetre and every second ten of them filled. */
function rule(x: number, y: number, length: number, scale: number): string {
  const width = 3.4 * scale;
  const parts = [
    rect(x + 5, y - length * scale + 6, width, length * scale - 6, 'fill="#000" opacity="0.16" filter="url(#near)"'),
  ];
  parts.push(rect(x, y - length * scale, width, length * scale, `fill="#f7e9c4" stroke="${INK}" stroke-width="2.5"`));
  for (let cm = 0; cm < length; cm += 10) {
    if ((cm / 10) % 2 === 0) continue;
    parts.push(rect(x, y - (cm + 10) * scale, width, 10 * scale, `fill="${INK}"`));
  }
  for (let cm = 1; cm < length; cm++) {
    if (cm % 10 === 0) continue;
    const colour = Math.floor(cm / 10) % 2 === 1 ? '#f7e9c4' : INK;
    const reach = cm % 5 === 0 ? 0.5 : 0.28;
    parts.push(line(x + width - 2, y - cm * scale, x + width * (1 - reach), y - cm * scale, 1.4, colour));
  }
  return parts.join('');
}

function room(height: number, horizon: number): string {
  const boards = Array.from({ length: 13 }, (_, i) => {
    const at = -6 + i;
    return line(WIDTH / 2 + at * 96, horizon, WIDTH / 2 + at * 260, height, 1.6, '#a08a6c');
  });
  return [
    rect(0, 0, WIDTH, horizon, 'fill="url(#wall)"'),
    rect(0, horizon, WIDTH, height - horizon, 'fill="url(#floor)"'),
    ...boards,
    rect(-4, horizon - 44, WIDTH + 8, 44, `fill="#f8f4ea" stroke="${INK}" stroke-width="2.5"`),
    line(0, horizon - 36, WIDTH, horizon - 36, 1.4, '#b8ac95'),
  ].join('');
}

const page = (height: number, parts: readonly string[]) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}" fill="none">${DEFS}${parts.join('')}</svg>`;

/** A tall panel on the floor, a metre beside it. */
export function floorScene(panel: DrawnPanel, stand: { above: number; feet: 'board' | 'wheels' }): string {
  const height = 1200;
  const scale = 7.2;
  const [horizon, ground] = [905, 1075];
  const x = 430;
  const bottom = ground - stand.above * scale;
  const half = 0.62 * panel.housing.width * scale;
  const board = [
    rect(x - half, ground - 14, 2 * half, 16, `rx="4" fill="#3d4346" stroke="${INK}" stroke-width="3"`),
    line(x - 0.3 * half, bottom, x - 0.3 * half, ground - 14, 12),
    line(x + 0.3 * half, bottom, x + 0.3 * half, ground - 14, 12),
  ];
  const wheels = [
    line(x, bottom - 40, x, ground - 46, 20),
    line(x, bottom - 40, x, ground - 46, 12, '#7b8488'),
    `<path d="M${x - half - 40} ${ground - 16}Q${x - half} ${ground - 46} ${x} ${ground - 46}T${x + half + 40} ${ground - 16}" stroke="${INK}" stroke-width="14" stroke-linecap="round"/>`,
    ...[x - half - 40, x, x + half + 40].map(
      (at) =>
        `<circle cx="${at}" cy="${ground - 10}" r="15" fill="#6b7478" stroke="${INK}" stroke-width="4"/><circle cx="${at}" cy="${ground - 10}" r="4" fill="${INK}"/>`,
    ),
  ];
  return page(height, [
    room(height, horizon),
    `<ellipse cx="${x}" cy="${ground + 8}" rx="${1.9 * half}" ry="66" fill="#d8433f" opacity="0.3" filter="url(#far)"/>`,
    `<ellipse cx="${x + 12}" cy="${ground + 6}" rx="${1.35 * half}" ry="20" fill="#000" opacity="0.32" filter="url(#near)"/>`,
    ...(stand.feet === 'wheels' ? wheels : board),
    front(panel, x, bottom, scale),
    `<ellipse cx="790" cy="${ground + 4}" rx="34" ry="9" fill="#000" opacity="0.28" filter="url(#near)"/>`,
    rule(770, ground, 100, scale),
  ]);
}

/** A small panel on a table, with the first tens of centimetres of the rule. */
export function deskScene(panel: DrawnPanel, { handle }: { handle: boolean }): string {
  const height = 720;
  const scale = 18;
  const [edge, ground] = [520, 590];
  const x = 410;
  const [w, h] = [panel.housing.width * scale, panel.housing.height * scale];
  const top = ground - 20 - h;
  const grip = `<path d="M${x - 70} ${top - 4}v-28q0 -18 18 -18h104q18 0 18 18v28" stroke="${INK}" stroke-width="20" stroke-linejoin="round"/><path d="M${x - 70} ${top - 4}v-28q0 -18 18 -18h104q18 0 18 18v28" stroke="#596165" stroke-width="12" stroke-linejoin="round"/>`;
  return page(height, [
    rect(0, 0, WIDTH, edge, 'fill="url(#wall)"'),
    rect(0, edge, WIDTH, 150, 'fill="url(#floor)"'),
    rect(0, edge + 150, WIDTH, 60, `fill="#a58d6d" stroke="${INK}" stroke-width="3"`),
    ...[0, 1, 2, 3].map((i) => line(-20, edge + 26 + i * 34, WIDTH + 20, edge + 20 + i * 35, 1.2, '#ab9678')),
    line(0, edge, WIDTH, edge, 2.5),
    `<ellipse cx="${x}" cy="${ground + 10}" rx="${0.95 * w}" ry="52" fill="#d8433f" opacity="0.34" filter="url(#far)"/>`,
    `<ellipse cx="${x + 14}" cy="${ground + 2}" rx="${0.62 * w}" ry="15" fill="#000" opacity="0.34" filter="url(#near)"/>`,
    ...(handle ? [grip] : []),
    rect(x - 0.34 * w, ground - 26, 26, 28, `rx="4" fill="#33393c" stroke="${INK}" stroke-width="3"`),
    rect(x + 0.34 * w - 26, ground - 26, 26, 28, `rx="4" fill="#33393c" stroke="${INK}" stroke-width="3"`),
    front(panel, x, ground - 20, scale),
    rule(735, ground, 30, scale),
  ]);
}
