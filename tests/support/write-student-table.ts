/** Writes src/measure/student-t-table.ts. Format it afterwards: `npm run format`. */
import { writeFileSync } from 'node:fs';
import jstat from 'jstat';

/** Up to here the table goes; beyond, the expansion about the normal quantile is as good as any search. */
const LAST = 100;

const rows = Array.from({ length: LAST }, (_, i) => `  ${jstat.studentt.inv(0.975, i + 1)},`);
writeFileSync(
  'src/measure/student-t-table.ts',
  `// Written by \`npx node tests/support/write-student-table.ts\`: the values of jstat, which readers need not download.

/** The 0.975 quantile of the normal distribution. */
export const NORMAL_975 = ${jstat.normal.inv(0.975, 0, 1)};

/** The 0.975 quantile of Student's t with 1, 2, 3 ... degrees of freedom. */
export const STUDENT_975: readonly number[] = [
${rows.join('\n')}
];
`,
);
