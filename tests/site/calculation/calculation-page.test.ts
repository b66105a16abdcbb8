import { expect, test } from 'vitest';
import {
  CALCULATION_FRAME,
  type CalculationPage,
  frameFiller,
} from '../../../src/site/calculation/calculation-page.ts';

const { slug, name, main } = CALCULATION_FRAME;
const frame = `<title>${name}: the working</title><meta content="of the ${name}"><link href="https://a.example/panels/${slug}/methodology/"><main>${main}</main>`;

test('puts a panel’s own into every place of the frame, its name as text', () => {
  const page: CalculationPage = { slug: 'reed', name: 'A "B" <C> & D', main: '<h1>The working</h1>' };
  const own = 'A &quot;B&quot; &lt;C&gt; &amp; D';
  expect(frameFiller(frame)(page).join('')).toBe(
    `<title>${own}: the working</title><meta content="of the ${own}"><link href="https://a.example/panels/reed/methodology/"><main><h1>The working</h1></main>`,
  );
});

test('marks that a panel’s own texts hold are texts', () => {
  const page = { slug: 'reed', name: main, main: `<p>${name} ${slug}</p>` };
  expect(frameFiller(frame)(page).join('')).toContain(`<title>${main}: the working</title>`);
  expect(frameFiller(frame)(page).join('')).toContain(`<main><p>${name} ${slug}</p></main>`);
});

test.each([slug, name, main])('a frame without %s is refused', (mark) => {
  expect(() => frameFiller(frame.replaceAll(mark, ''))).toThrow(/no place for the (slug|name|main)/);
});
