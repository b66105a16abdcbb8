import type { Command } from 'commander';
import { calledAs } from '../../content/read/called-as.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { INSTRUMENT_KINDS } from '../../content/schema/instrument.ts';
import { todayFrom } from '../../ledger/today.ts';
import { processTerminal, type Terminal } from '../ask/terminal.ts';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { writeNew } from '../files/write-new.ts';
import { answersFrom, faultOf, type Given, instrumentOf, QUESTIONS } from './answers.ts';
import { callFrom, guideFolder, type Place } from './guide-folder.ts';

/** `start FOLDER`: writes the folder of a guide of the tester's own. */
export function startCommand(terminal: Terminal = processTerminal()): Command {
  const command = ledgerCommand('start', {
    does: 'Write the folder of a guide of your own.',
    more: `On a terminal it asks for what is not given; an empty answer takes what stands in
brackets. --yes asks nothing. Only what is yours is written: pages on methods and
cautions come with the program. Nothing is ever written over.

Kinds of instruments: ${INSTRUMENT_KINDS.slice(0, 5).join(', ')},
${INSTRUMENT_KINDS.slice(5).join(', ')}. Their files have TODO
where only their papers know.`,
    examples: [
      ['start ../our-guide', 'ask, and write a folder beside this one'],
      ['start ../our-guide --repository --instrument mains=Wattmeter', 'a repository of its own, with a first meter'],
    ],
    exits: { 0: 'written', [PROBLEM_CODE]: 'something is missing, wrong or there already: nothing was written' },
  }).argument('<folder>', 'the folder to write');
  for (const { flag, asks, usual } of QUESTIONS) {
    command.option(`${flag} <text>`, `${asks}${usual ? ` [${shortly(usual({}))}]` : ''}`);
  }
  return command
    .option('--instrument <kind=name>', 'an instrument of the bench; may be given again', collect)
    .option('--repository', 'make it a repository of its own, with a package.json')
    .option('--yes', 'ask nothing')
    .action(async (folder: string, { repository = false, yes = false, ...given }: Given & Flags) => {
      const place: Place = { folder, isRepository: repository, today: todayFrom(process.env, new Date()) };
      const ask = yes ? undefined : terminal.ask;
      const result = answersFrom(ask ? await asked(given, { ...terminal, ask }) : given);
      if ('faults' in result)
        throw new UsageError(`Nothing was written.\n${result.faults.map((it) => `  ${it}`).join('\n')}`);
      const files = guideFolder(result.answers, place);
      writeNew(folder, files);
      const { enter, run } = callFrom(place);
      terminal.say(
        [
          `Wrote ${files.size} files in ${folder}. Every field of content/guide.yaml is explained there.`,
          '',
          'Next:',
          ...[...enter, `${run} check`, `${run} new --help`, `${run} dev`].map((it) => `  ${it}`),
        ].join('\n'),
      );
    });
}

interface Flags {
  repository?: boolean;
  yes?: boolean;
}

function collect(text: string, before: readonly string[] = []): string[] {
  return [...before, text];
}

function shortly(text: string): string {
  return text.length > 40 ? 'a sentence' : text;
}

/** Asks for all that was not given, each until it can stand. */
async function asked(given: Given, { ask, say }: Terminal & { ask: NonNullable<Terminal['ask']> }): Promise<Given> {
  const answers: Given = { ...given };
  for (const { key, flag, asks, usual } of QUESTIONS) {
    const fault = answers[key] === undefined ? undefined : faultOf(key, answers[key]);
    if (fault) say(`${flag} ${fault}`);
    if (answers[key] !== undefined && !fault) continue;
    answers[key] = await answerTo(key, asks, usual?.(answers), { ask, say });
  }
  if (given.instrument) return answers;
  say(`\nInstruments, one a line, as KIND=name; an empty line ends them.\nKinds: ${INSTRUMENT_KINDS.join(', ')}.`);
  const instruments: string[] = [];
  for (let line = await ask('Instrument: '); line !== ''; line = await ask('Instrument: ')) {
    const it = instrumentOf(line);
    if (typeof it === 'string') say(it);
    else instruments.push(line);
  }
  return { ...answers, instrument: instruments };
}

/** As often as nobody can go wrong: whoever sends the same wrong answer again is no person. */
const MOST_TRIES = 5;

async function answerTo(
  key: (typeof QUESTIONS)[number]['key'],
  asks: string,
  usual: string | undefined,
  { ask, say }: { ask: NonNullable<Terminal['ask']>; say: Terminal['say'] },
): Promise<string> {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const text = (await ask(`${asks}${usual === undefined ? '' : ` [${usual}]`}: `)) || (usual ?? '');
    const fault = faultOf(key, text);
    if (!fault) return text;
    say(fault);
  }
  throw new UsageError(`Nothing was written. Start again, or give the answers as flags: ${calledAs()} start --help`);
}
