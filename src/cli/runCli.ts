import { Command, CommanderError } from 'commander';
import packageJson from '../../package.json' with { type: 'json' };
import type { AssessOptions } from './assessCommand.ts';
import type { CalcOptions } from './calcCommand.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import type { DayOptions } from './dayCommand.ts';
import type { LeafletOptions } from './leafletCommand.ts';
import type { DataOptions } from './openData.ts';
import type { PlanOptions } from './planCommand.ts';

/** The words after `ebbline`, to an exit code. A wrong command line is 2, as is wrong input. Only the command asked for is loaded. */
export async function runCli(argv: readonly string[], io: CliIo): Promise<ExitCode> {
  let code: ExitCode = 0;
  const program = buildProgram(io, (result) => {
    code = result;
  });
  try {
    await program.parseAsync([...argv], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? 0 : 2;
  }
  return code;
}

function buildProgram(io: CliIo, done: (code: ExitCode) => void): Command {
  const withoutBreak = (print: (line: string) => void) => (text: string) => print(text.replace(/\n$/, ''));
  const program = new Command('ebbline')
    .description(packageJson.description)
    .version(packageJson.version)
    .exitOverride()
    .configureOutput({ writeOut: withoutBreak(io.write), writeErr: withoutBreak(io.warn) })
    .showSuggestionAfterError();

  program
    .command('start')
    .description('start the server; takes the options of "npm start"')
    .allowUnknownOption()
    .helpOption(false)
    .argument('[options...]')
    .action(async (options: string[]) => done(await (await import('./startCommand.ts')).startCommand(options, io)));

  program
    .command('calc')
    .description('one computation: JSON from standard input, JSON to standard output')
    .argument('[name]', 'name of the calculator')
    .option('--list', 'name every calculator')
    .option('--schema', 'print the JSON Schema of input and output')
    .option('--lines', 'one object per line in, one per line out')
    .action(async (name: string | undefined, options: CalcOptions) =>
      done(await (await import('./calcCommand.ts')).calcCommand(name, options, io)),
    );

  program
    .command('assess')
    .description('assess a visit file, or with --lines one visit per line; "-" is standard input')
    .argument('[file]', 'visit file', '-')
    .option('--json', 'everything, as JSON (the default unless a terminal is watching)')
    .option('--text', 'a page to read')
    .option('--parts <names>', 'compute and print only these, with commas between: reading, risk, plan, explain, leaflet')
    .option('--schema', 'print the JSON Schema of a visit file')
    .option('--lines', 'one visit per line in, one assessment per line out')
    .option('--progress', 'draw a progress bar even where standard error is no terminal')
    .action(async (file: string, options: AssessOptions) =>
      done(await (await import('./assessCommand.ts')).assessCommand(file, options, io)),
    );

  program
    .command('leaflet')
    .description("the person's leaflet as PDF")
    .argument('<file>', 'visit file; "-" is standard input')
    .requiredOption('--pdf <out>', 'where the PDF goes')
    .option('--letter', 'US Letter instead of A4')
    .option('--language <code>', "en, es, fr or ar, instead of the visit's own")
    .option('--large-print', '18 pt and more, on two pages where they hold it')
    .action(async (file: string, options: LeafletOptions) =>
      done(await (await import('./leafletCommand.ts')).leafletCommand(file, options, io)),
    );

  program
    .command('note')
    .description('the chart note of a visit, as plain text')
    .argument('[file]', 'visit file; "-" is standard input', '-')
    .action(async (file: string) => done(await (await import('./noteCommand.ts')).noteCommand(file, io)));

  program
    .command('plan')
    .description('regimens from the shelf for the person of a visit file, or of an input of the calculator regimen-proposal')
    .argument('[file]', 'visit file or calculator input; "-" is standard input', '-')
    .option('--json', 'the output of the calculator instead of a page to read')
    .action(async (file: string, options: PlanOptions) => done(await (await import('./planCommand.ts')).planCommand(file, options, io)));

  program
    .command('day')
    .description('the acid day: minutes, costs and changes of a described day as text, its curve as a picture')
    .argument('[file]', 'file of a day; "-" is standard input', '-')
    .option('--svg <out>', 'where the picture goes (default: the name of the file with .svg, in this folder)')
    .action(async (file: string, options: DayOptions) => done(await (await import('./dayCommand.ts')).dayCommand(file, options, io)));

  const recoveryKey = ['--recovery-key', 'ask for the printed recovery key instead of the passphrase'] as const;
  program
    .command('backup')
    .description('a checked copy of the data into a new folder, also while the server runs')
    .argument('<folder>', 'a new or empty folder')
    .option('--data <folder>', 'the data folder (default: data/practice)')
    .option(...recoveryKey)
    .action(async (folder: string, options: DataOptions & { data?: string }) =>
      done(await (await import('./backupCommand.ts')).backupCommand(folder, options, io)),
    );

  program
    .command('restore')
    .description('put a backup into an empty folder')
    .argument('<backup>', 'folder of the backup')
    .argument('<folder>', 'a new or empty folder')
    .option(...recoveryKey)
    .action(async (backup: string, folder: string, options: DataOptions) =>
      done(await (await import('./restoreCommand.ts')).restoreCommand(backup, folder, options, io)),
    );

  program
    .command('verify')
    .description('recompute the chain of changes and the digest of every row of a data or backup folder; writes nothing')
    .argument('[folder]', 'default: data/practice')
    .option(...recoveryKey)
    .action(async (folder: string | undefined, options: DataOptions) =>
      done(await (await import('./verifyCommand.ts')).verifyCommand(folder, options, io)),
    );

  return program;
}
