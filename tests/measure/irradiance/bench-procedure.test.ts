import { describe, expect, test } from 'vitest';
import {
  areNinePointAlike,
  ninePointBasis,
  procedureVersions,
  versionsAlike,
} from '../../../src/measure/irradiance/bench-procedure.ts';
import { versionOf } from '../../../src/measure/method-versions.ts';
import { WITH_THIRD } from '../../support/third-procedure.ts';

describe('versions of the bench procedure', () => {
  test('are those up to the version of the method, without a gap', () => {
    const newest = versionOf('bench-procedure');
    expect(procedureVersions()).toEqual(Array.from({ length: newest }, (_, i) => i + 1));
  });

  test('1 and 2 read the grid alike, in either order', () => {
    expect(areNinePointAlike(1, 2)).toBe(true);
    expect(areNinePointAlike(2, 1)).toBe(true);
    expect(versionsAlike(2)).toEqual([1, 2]);
  });

  test('a version that reads the grid in another way is like itself only', () => {
    expect(areNinePointAlike(2, 3, WITH_THIRD)).toBe(false);
    expect(areNinePointAlike(3, 3, WITH_THIRD)).toBe(true);
    expect(versionsAlike(1, WITH_THIRD)).toEqual([1, 2]);
    expect(versionsAlike(3, WITH_THIRD)).toEqual([3]);
  });

  test.each([0, 3, 1.5, Number.NaN])('%s does not exist, and is refused by name', (version) => {
    expect(() => ninePointBasis(version)).toThrow(`no version ${version} of the bench procedure: there are 1 and 2`);
    expect(() => areNinePointAlike(1, version)).toThrow(RangeError);
  });
});
