/**
 * Prints how often the 95 % intervals of the optics model hold the truth, over simulated panels of many kinds: the
 * numbers on the method pages. `npx node tests/bench/beam-study.ts [PANELS] [none,sweep,beyond] [KIND,KIND]`
 */
import {
  type Extra,
  KEPT_ASIDE,
  KINDS,
  kendallTau,
  LOPSIDED,
  type Outcome,
  outcomeOf,
  simulatedCase,
} from '../support/beam-study.ts';

const panels = Number(process.argv[2] ?? 40);
const extras = (process.argv[3] ?? 'none,sweep,beyond').split(',') as Extra[];
const kinds = process.argv[4]?.split(',') ?? [KINDS, KEPT_ASIDE, LOPSIDED].flatMap((it) => Object.keys(it));
const from = Number(process.argv[5] ?? 1);

const percent = (share: number) => `${(100 * share).toFixed(0).padStart(4)}`;
const NAMES = ['emitted', 'capture', 'mean30', 'peak30', 'mean60', 'peak60'] as const;

for (const extra of extras) {
  console.log(`\n${extra.padEnd(12)}  emit capt  m30  p30  m60  p60 | ±half  rms bias withheld   ms`);
  const all: Outcome[] = [];
  for (const kind of kinds) {
    const outcomes = Array.from({ length: panels }, (_, i) => outcomeOf(simulatedCase(kind, from + i), extra));
    all.push(...outcomes);
    const some = outcomes.filter((it) => it.halfWidth !== undefined);
    const shares = NAMES.map((name) => {
      const told = some.filter((it) => it.holds[name] !== undefined);
      return percent(told.filter((it) => it.holds[name]).length / told.length);
    });
    const half =
      some.map((it) => it.halfWidth as number).toSorted((a, b) => a - b)[Math.floor(some.length / 2)] ?? Number.NaN;
    const errors = some.map((it) => it.error as number);
    const mean = errors.reduce((sum, it) => sum + it, 0) / errors.length;
    const rms = Math.sqrt(errors.reduce((sum, it) => sum + it * it, 0) / errors.length);
    const ms = outcomes.map((it) => it.milliseconds).toSorted((a, b) => a - b)[Math.floor(outcomes.length / 2)] ?? 0;
    console.log(
      `${kind.padEnd(12)} ${shares.join(' ')} | ${percent(half)} ${percent(rms)} ${percent(mean)}  ${percent(1 - some.length / outcomes.length)}  ${ms.toFixed(0).padStart(6)}`,
    );
  }
  const told = all.filter((it) => it.exponent.modelled !== undefined);
  const net = told.map(({ exponent }) => Math.log(exponent.true / (exponent.modelled as number)));
  const centre = net.reduce((sum, it) => sum + it, 0) / net.length;
  const off = Math.sqrt(net.reduce((sum, it) => sum + (it - centre) ** 2, 0) / net.length);
  console.log(`price per emitted watt is off by ${percent(off)} % (root mean square) beside the calibration`);
  const modelled = kendallTau(told.map((it) => [it.exponent.true, it.exponent.modelled as number]));
  const common = kendallTau(told.map((it) => [it.exponent.true, it.exponent.common]));
  const halves = all.flatMap((it) => (it.kind === 'even' && it.halfAngle ? [it.halfAngle] : []));
  const ruledOut = [0.7, 0.85, 1, 1.15, 1.3, 1.5, 2].map((by) => {
    const count = halves.filter(({ truth, low, high }) => by * truth < low || by * truth > high).length;
    return `${by}: ${percent(count / halves.length)}`;
  });
  console.log(`claims of so many times the true angle that are ruled out, %: ${ruledOut.join(', ')}`);
  console.log(`order by price per emitted watt: tau ${modelled.toFixed(3)}, by the common figure ${common.toFixed(3)}`);
}
