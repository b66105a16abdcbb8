import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { problemAt, texts } from '../read/fields.ts';
import { OTHERS } from '../read/others/other-guides.ts';
import { folderFiles } from '../read/others/package-files.ts';
import { readPackage } from '../read/others/read-package.ts';
import type { Rule } from './rule.ts';

/** Data packages of other testers, where the guide publishes how far it agrees with them, are there and can be read. */
export const othersReadable: Rule = {
  id: 'others-readable',
  run: ({ guide }, { folder, shownAs }) =>
    [...guide.values()].flatMap((source) =>
      texts(source, 'agreement', '*').flatMap((field) => {
        const place = `${OTHERS}/${field.value}`;
        if (!/^[\w-]+$/.test(field.value)) {
          return [problemAt(source, field, `the name of a folder in ${shownAs}/${OTHERS}`)];
        }
        if (!existsSync(join(folder, place))) {
          return [
            problemAt(
              source,
              field,
              `a folder in ${shownAs}/${OTHERS}`,
              `put the other guide’s datapackage.json with its tables/ into ${shownAs}/${place}`,
            ),
          ];
        }
        return readPackage(folderFiles(join(folder, place)), `${shownAs}/${place}`).problems;
      }),
    ),
};
