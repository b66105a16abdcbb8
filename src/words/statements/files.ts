import { unitSigns } from '../format.ts';
import { nameOf } from '../names.ts';
import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** What is told of files from the bench, whatever their kind. */
export const FILE_WORDS: WordsOf<
  'table-decimal-commas' | 'table-encoding' | 'table-foot-left-out' | 'file-against-typed' | 'which-of-the-two'
> = {
  'table-decimal-commas': () => 'numbers with decimal commas',
  'table-encoding': ({ encoding }) => `letters in ${encoding.toUpperCase().replace('WINDOWS', 'Windows')}`,
  'table-foot-left-out': ({ lines }) =>
    `${lines === 1 ? 'one line of words' : `${lines} lines of words`} behind the last row left out`,
  'file-against-typed': ({ metric, typed, file, unit, bound, joint }) => {
    const sign = bound === undefined ? '' : bound === 'below' ? '<' : '>';
    return `${capital(nameOf(metric))}: the file gives ${rounded(file)} ${unitSigns(unit)}, typed is ${sign}${rounded(typed)} ${unitSigns(unit)}. They differ by more than the ±${rounded(joint, 2)} ${unitSigns(unit)} that both explain. The figure rests on the file.`;
  },
  'which-of-the-two': () =>
    'look at the display’s reading and at the file again: is it this session’s file, and this channel’s?',
};
