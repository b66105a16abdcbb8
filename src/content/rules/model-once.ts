import { problemAt, texts } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import type { Rule } from './rule.ts';

/** Readers know a panel by maker and model; two folders of one would be ranked against each other. */
export const modelOnce: Rule = {
  id: 'model-once',
  run: ({ panels }) => {
    const seen = new Map<string, Source>();
    return [...panels.values()].flatMap((panel) => {
      const [maker] = texts(panel, 'maker');
      const [model] = texts(panel, 'model');
      if (!maker || !model) return [];
      const name = `${maker.value}\n${model.value.trim().replace(/\s+/g, ' ').toLowerCase()}`;
      const first = seen.get(name);
      if (first === undefined) {
        seen.set(name, panel);
        return [];
      }
      // Two files of one folder are a problem of their own.
      if (folderOf(first) === folderOf(panel)) return [];
      return [
        problemAt(
          panel,
          model,
          `a model that no other file of this maker has; ${first.file} has it too`,
          'sessions and prices of one panel stand in one file; a later version needs a name that tells the two apart',
        ),
      ];
    });
  },
};

const folderOf = ({ file }: Source) => file.slice(0, file.lastIndexOf('/'));
