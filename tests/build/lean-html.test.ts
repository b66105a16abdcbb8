import { expect, test } from 'vitest';
import { leanHtml } from '../../src/build/lean-html.ts';

const CALCULATION = '/panels/plover/methodology/';
const PANEL = '/panels/plover/';

const TABLE =
  '<table><thead><tr><td></td><th scope="col">red</th> </tr></thead>\n<tbody><tr><th scope="row">peak</th><td>28 W</td></tr></tbody></table>';

test.each([
  [
    'parts of tables, with the spaces between them',
    TABLE,
    '<table><thead><tr><td><th scope="col">red<tbody><tr><th scope="row">peak<td>28 W</table>',
  ],
  ['items, whose spaces stay', '<ul><li>one</li> <li>two</li></ul>', '<ul><li>one <li>two</ul>'],
  ['terms', '<dl><dt>a</dt><dd>b</dd><dt>c</dt><dd>d</dd></dl>', '<dl><dt>a<dd>b<dt>c<dd>d</dl>'],
  ['terms in groups', '<dl><div><dt>a</dt><dd>b</dd></div></dl>', '<dl><div><dt>a<dd>b</div></dl>'],
  ['paragraphs before blocks', '<div><p>a</p><p>b</p></div>', '<div><p>a<p>b</div>'],
  ['a paragraph in an item', '<ul><li><p>a</p></li><li>b</li></ul>', '<ul><li><p>a<li>b</ul>'],
  ['rows before a foot', '<tr><td>1</td></tr></tfoot>', '<tr><td>1</tfoot>'],
])('end tags that what follows makes needless are left out: %s', (_, full, lean) => {
  expect(leanHtml(full, CALCULATION)).toBe(lean);
});

test.each([
  ['a paragraph before words', '<p>a</p> b'],
  ['a paragraph before what may stand in one', '<p>a</p><a href="/">b</a>'],
  ['a paragraph in a link', '<a href="/"><p>a</p></a>'],
  ['a row before words', '<tr></tr>x'],
  ['a cell before a head', '<td>1</td><thead>'],
  ['a term in an item', '<li><dt>a</dt></li>x'],
  ['what is written as text', '&lt;/td>&lt;td> &lt;/li>&lt;li>'],
  ['names that only begin alike', '<li>a</li><link rel="x"><dl><dd>b</dd><data>'],
])('others stay: %s', (_, full) => {
  expect(leanHtml(full, CALCULATION)).toBe(full);
});

test('where the search looks, cells alone lose theirs, and keep a space that parts their words', () => {
  expect(leanHtml(`<p>a</p><p>b</p>${TABLE}`, PANEL)).toBe(
    '<p>a</p><p>b</p><table><thead><tr><td> <th scope="col">red <tbody><tr><th scope="row">peak <td>28 W </table>',
  );
});

test('pages that are not a panel’s stay as they are', () => {
  for (const page of ['/', '/panels/', '/methods/plover/']) expect(leanHtml(TABLE, page)).toBe(TABLE);
});
