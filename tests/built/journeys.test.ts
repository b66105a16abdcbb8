/** What readers come for, walked in both browsers. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BROWSERS, startWalk, type Walk } from './walker.ts';

const PHONE = { width: 390, height: 844 };

describe.each(BROWSERS)('in %s', (browser) => {
  let walk: Walk;
  beforeAll(async () => {
    walk = await startWalk(browser);
  });
  afterAll(() => walk.close());

  test('a link to one number opens at it, folded or not', async () => {
    await using walker = await walk.open(PHONE);
    await walker.go('/panels/kelpwright-gannet/methodology/#optical-power');
    await walker.until((height) => {
      const figure = document.querySelector('#optical-power');
      const top = figure?.getBoundingClientRect().top ?? -1;
      return figure?.closest('details')?.open && top >= 0 && top < height / 2;
    }, PHONE.height);
    expect(walker.complaints).toEqual([]);
  });
});
