import { Command } from 'commander';
import { contentFolder } from '../ledger/load-ledger.ts';
import { counted, problemList } from '../ledger/problem-list.ts';
import { readContent } from '../ledger/read-content.ts';
import { todayFrom } from '../ledger/today.ts';

/** `check [folder]`: every problem of the content, or a line that says there is none. Exit 1 where there is any. */
export function checkCommand(): Command {
  return new Command('check')
    .description('Check all content files and list every problem in them.')
    .argument('[folder]', 'the content folder', contentFolder())
    .action((folder: string) => {
      const { content, problems } = readContent({ folder, today: todayFrom(process.env, new Date()), shownAs: folder });
      if (!content) {
        console.error(problemList(problems));
        process.exitCode = 1;
        return;
      }
      const { panels, methods, instruments, makers } = content;
      console.log(
        `No problems in ${folder}: ${counted(panels.size, 'panel')}, ${counted(makers.size, 'maker')}, ${counted(instruments.size, 'instrument')}, ${counted(methods.size, 'method')}.`,
      );
    });
}
