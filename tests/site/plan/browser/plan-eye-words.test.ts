/** What the planner says of an eye, beside what the panel's own page says of it. */
import { beforeAll, describe, expect, test } from 'vitest';
import { isFigure } from '../../../../src/measure/figure.ts';
import { type EyeShare, eyeShare } from '../../../../src/site/plan/browser/plan-calculation.ts';
import { eyeLine, eyeTimes, eyeWords, longerThanLimit } from '../../../../src/site/plan/browser/plan-eye-words.ts';
import { type PlanData, type PlanPanel, unpackPlan } from '../../../../src/site/plan/browser/plan-panel.ts';
import { planJson } from '../../../../src/site/plan/plan-data.ts';
import { limitWords } from '../../../../src/words/limits/index.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
let data: PlanData;
beforeAll(() => {
  demo = demoLedger();
  data = unpackPlan(JSON.parse(planJson(demo.ledger)));
});

const EMPTY: PlanPanel = {
  slug: 'none',
  name: 'None',
  group: 'Small',
  mains: { absent: 'the mains draw was not measured' },
  infrared: { shares: [], isErrorKnown: true },
  cautions: {},
};
const read = (value: number, high: number, cautiousSeconds: number): EyeShare => ({
  there: { kind: 'read', reading: { distance: 30, value, low: value, high } },
  cautious: high,
  cautiousSeconds,
});

test.each([30, 60])('at %d cm it names the time that the panel’s page names, and the true share alike', (cm) => {
  let times = 0;
  for (const panel of data.panels) {
    const result = demo.panel(panel.slug).current?.limits.find((it) => it.id === `infrared-share-at-${cm}-cm`);
    if (!result || !isFigure(result.figure)) continue;
    const onPage = limitWords(result).outcome.join(' ');
    const planned = eyeWords(panel, cm, eyeShare(panel, cm));
    const timeIn = (text: string) => /would be used up after [^.]*(?:\.\d+ s)?\./.exec(text)?.[0];
    expect(timeIn(planned), panel.slug).toBe(timeIn(onPage));
    if (timeIn(onPage)) times++;
    const unknown = 'the true share may be higher';
    expect(planned.includes(unknown), panel.slug).toBe(onPage.includes(unknown));
    expect(planned).toContain(`Looking towards the panel from ${cm} cm, near-infrared alone gives`);
  }
  expect(times).toBeGreaterThan(2);
});

describe('what reaches an eye', () => {
  test('of a reading: share, cautious end and time', () => {
    expect(eyeWords(EMPTY, 30, read(500, 549.1, 104.95))).toBe(
      'Looking towards the panel from 30 cm, near-infrared alone gives 500 % of the limit for long exposures, 100 W/m² (IEC 62471:2006, 4.3.7, seen in secondary sources only); at the cautious end of the interval 550 %. At the cautious end, the limit would be used up after 1 min 44 s.',
    );
  });

  test('where no interval is known, and up to the limit', () => {
    const words = eyeWords(EMPTY, 30, read(40, 40, Number.POSITIVE_INFINITY));
    expect(words).toContain('40.0 % of the limit');
    expect(words).toContain('; the value itself is used, for its uncertainty is not known. ');
    expect(words).toContain('it lies no higher than that limit, up to which the standard limits no time.');
  });

  test('of a range both ends; of nothing, why', () => {
    const from = { distance: 15, value: 500, low: 450, high: 549 };
    const range: EyeShare = {
      there: { kind: 'range', low: 116.4, high: 549, from },
      cautious: 549,
      cautiousSeconds: 104.95,
    };
    expect(eyeWords(EMPTY, 30, range)).toContain('gives somewhere from 116 % to 549 % of the limit');
    expect(eyeWords(EMPTY, 30, { unknown: 'near-infrared alone was not measured' })).toBe(
      'What near-infrared reaches an eye at 30 cm: near-infrared alone was not measured.',
    );
  });
});

describe('longer than the limit', () => {
  test('is the time itself, or its upper end', () => {
    const eye = read(500, 549, 104.95);
    expect(longerThanLimit({ value: 100 }, eye)).toBeUndefined();
    expect(longerThanLimit({ value: 200 }, eye)).toBe('itself');
    expect(longerThanLimit({ value: 100, high: 120 }, eye)).toBe('upper end');
    expect(longerThanLimit({ value: 1e6 }, read(50, 60, Number.POSITIVE_INFINITY))).toBeUndefined();
  });

  test('is told by the reading farther away, where it is not known here', () => {
    expect(longerThanLimit({ value: 200 }, { unknown: 'not known', secondsFartherAway: 100 })).toBe('itself');
    expect(longerThanLimit({ value: 200 }, { unknown: 'not known' })).toBeUndefined();
  });
});

describe('the line of the eye', () => {
  const panel: PlanPanel = {
    ...EMPTY,
    infrared: { shares: [{ distance: 15, value: 500, low: 450, high: 549 }], isErrorKnown: true },
  };

  test('says first that the time is longer, and then by what', () => {
    expect(eyeLine(panel, 15, 'cm', { value: 200 })).toEqual({
      longer: 'Longer than the infrared limit for the eye, looking towards the panel.',
      text: 'At 15 cm that limit would be used up after 1 min 44 s, at the cautious end.',
    });
    expect(eyeLine(panel, 15, 'cm', { value: 100, high: 120 }).longer).toMatch(
      /^At the upper end of its interval longer/,
    );
  });

  test('has no such word where it is no longer, and says neither yes nor no', () => {
    expect(eyeLine(panel, 15, 'in', { value: 20 })).toEqual({
      text: 'Looking towards the panel from 5.9 in, the infrared limit for the eye would be used up after 1 min 44 s, at the cautious end.',
    });
  });

  test('says no more than that it may be longer where only the ends of a range are known', () => {
    expect(eyeLine(panel, 30, 'cm', { value: 200 })).toEqual({
      longer: 'May be longer than the infrared limit for the eye, looking towards the panel.',
      text: 'At 30 cm that limit may be used up after 1 min 44 s, at the cautious end: it was not read there.',
    });
  });

  test('says where it was not read, where nobody knows, and where the standard limits no time', () => {
    expect(eyeLine(panel, 30, 'cm').text).toMatch(
      /may be used up after 1 min 44 s, at the cautious end: it was not read there/,
    );
    expect(eyeLine(panel, 8, 'cm', { value: 200 })).toEqual({
      longer: 'Longer than the infrared limit for the eye, looking towards the panel.',
      text: 'What near-infrared reaches an eye at 8 cm: not known nearer than near-infrared was read; it is not less than there. Where it was read, farther away, the limit would be used up after 1 min 44 s.',
    });
    const weak = {
      ...EMPTY,
      infrared: { shares: [{ distance: 15, value: 40, low: 38, high: 42 }], isErrorKnown: false },
    };
    expect(eyeLine(weak, 15, 'cm', { value: 1e5 }).text).toMatch(
      /no higher than .*limits no time\. How the meter errs/,
    );
  });

  test('draws the planned time beside the limit here and farther away, each time once', () => {
    expect(eyeTimes(panel, 30, 'cm', { value: 200 })).toEqual({
      marks: [
        { seconds: expect.closeTo(104.95, 0), label: 'limit at 30 cm' },
        { seconds: 200, label: 'planned' },
      ],
      from: expect.closeTo(104.95, 0),
      description:
        'The infrared limit for the eye, looking towards the panel, is used up after 1 min 44 s at 30 cm; planned: 3 min 20 s',
    });
    const three = data.panels.find((it) => 'shares' in it.infrared && it.infrared.shares.length === 3);
    if (!three) throw new Error('no panel read at three distances');
    const labels = (cm: number) => eyeTimes(three, cm, 'cm')?.marks.map((it) => it.label);
    expect(labels(30)).toEqual(['limit at 30 cm', '60 cm']);
    // Nearer than it was read nothing is drawn for the place itself.
    expect(labels(5)).toEqual(['limit at 15.24 cm', '30 cm', '60 cm']);
    expect(eyeTimes({ ...EMPTY, infrared: { absent: 'not measured' } }, 30, 'cm')).toBeUndefined();
  });
});
