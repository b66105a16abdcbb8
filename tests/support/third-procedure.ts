import type * as procedure from '../../src/measure/irradiance/bench-procedure.ts';

/** A third version of the bench procedure that reads the grid in another way, beside those that exist. */
export const WITH_THIRD = { 1: 'nine-point@1', 2: 'nine-point@1', 3: 'nine-point@2' };

/** The module of the versions as it would be with the third. */
export const withThird = (real: typeof procedure): typeof procedure => ({
  ...real,
  procedureVersions: (table = WITH_THIRD) => real.procedureVersions(table),
  ninePointBasis: (version, table = WITH_THIRD) => real.ninePointBasis(version, table),
  areNinePointAlike: (one, other, table = WITH_THIRD) => real.areNinePointAlike(one, other, table),
  versionsAlike: (version, table = WITH_THIRD) => real.versionsAlike(version, table),
});
