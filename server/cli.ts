#!/usr/bin/env node
// The command line: the same engine as the editor, for terminals, hooks and CI.
import { readFileSync, writeSync } from 'node:fs';
import { parentPort, workerData } from 'node:worker_threads';
import { Argument, Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { Temporal } from 'temporal-polyfill';
import { compareMarkdown } from '../language/compare/index.ts';
import { type TableKind, tableKinds } from '../language/tables/kinds.ts';
import { isValidDate } from '../language/values/calendar.ts';
import { version } from '../package.json';
import { type AddOptions, addToRigs, type Printed } from './cli/add-record.ts';
import { changedSince } from './cli/changed.ts';
import { checkText, compactText, printed } from './cli/check.ts';
import { runCheck } from './cli/check-run.ts';
import { compareRevisions } from './cli/compare.ts';
import { formatFiles, formatText } from './cli/format.ts';
import { serveJudging } from './cli/judging-threads.ts';
import { asked, Misuse } from './cli/paths.ts';
import { progressOn } from './cli/progress.ts';
import { sarifLog } from './cli/sarif.ts';
import { type ExportOptions, exportFile, type ImportOptions, importFile } from './cli/tables.ts';
import { writeDocuments } from './cli/write.ts';
import { enginePath } from './disk-node.ts';

const severities = ['error', 'warning', 'information', 'hint'] as const;
const formats = ['text', 'json', 'sarif', 'compact'] as const;

function date(text: string): string {
  if (!isValidDate(text)) throw new InvalidArgumentError('A date is written as year, month, day, such as 2026-04-18.');
  return text;
}

function count(text: string): number {
  if (!/^[1-9]\d?$/.test(text)) throw new InvalidArgumentError('A number from 1 to 99 is expected.');
  return Number(text);
}

interface DateOptions {
  readonly asOf?: string;
  readonly today?: string;
}
function datesOf(options: DateOptions) {
  const today = options.today ?? Temporal.Now.plainDateISO().toString();
  return { today, asOf: options.asOf ?? today };
}

interface CheckOptions extends DateOptions {
  readonly severity: (typeof severities)[number];
  readonly format: (typeof formats)[number];
  readonly changedSince?: string;
  readonly threads?: number;
  readonly cache?: string;
}

/** Writes all of a text to the standard output before the program ends, also into a pipe. */
function print(text: string): void {
  const bytes = Buffer.from(text);
  for (let done = 0; done < bytes.length; ) {
    try {
      done += writeSync(1, bytes, done);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'EPIPE') return;
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
    }
  }
}

const program = new Command('rigseam')
  .description('Checks records of rigs, and writes their estimates and schedules.')
  .version(version)
  .configureHelp({ showGlobalOptions: true })
  .exitOverride();
const asOfOption = () =>
  new Option('--as-of <date>', 'the date that everything speaks of (default: today)').argParser(date);
const todayOption = () => new Option('--today <date>', 'take this date for today; for tests').argParser(date);
const writeOption = () => new Option('--write', 'write it: all files, or none');
const orHere = (paths: readonly string[]) => (paths.length > 0 ? paths : ['.']);

/** What was done, or would be; exit code 1 where something was left out. */
function tell({ text, json, failed }: Printed, options: { readonly json?: true }): void {
  print(options.json ? `${JSON.stringify(json, undefined, 2)}\n` : text);
  if (failed) process.exitCode = 1;
}

program
  .command('check')
  .description('checks files and folders; exit code 1 when something at or above the severity is found')
  .argument('<paths...>', 'files or folders')
  .addOption(asOfOption())
  .addOption(todayOption())
  .addOption(new Option('--severity <severity>', 'what counts for the exit code').choices(severities).default('error'))
  .addOption(new Option('--format <format>', 'how findings are printed').choices(formats).default('text'))
  .addOption(new Option('--json', 'the same as `--format json`').implies({ format: 'json' }))
  .option('--changed-since <revision>', 'only what differs from a git revision, and the rigs that depend on it')
  .addOption(
    new Option('--cache <folder>', 'keep there what is found, and check only what has changed since').conflicts(
      'changedSince',
    ),
  )
  .addOption(
    new Option('--threads <number>', 'how many threads check (default: as many as pay, up to 4)').argParser(count),
  )
  .action(async (paths: string[], options: CheckOptions) => {
    const what = asked(paths, process.cwd());
    const changed = options.changedSince === undefined ? undefined : changedSince(what.roots, options.changedSince);
    const progress = progressOn(process.stderr, process.env, () => performance.now());
    const { threads, cache } = options;
    const result = await runCheck(what, datesOf(options), {
      script: import.meta.filename,
      tell: progress.tell,
      warn: (message) => console.error(`rigseam: ${message}`),
      ...(threads !== undefined && { threads }),
      ...(cache !== undefined && { cache: enginePath(cache) }),
      ...(changed && { changed }),
    });
    progress.end();
    const json = (data: unknown) => `${JSON.stringify(data, undefined, 2)}\n`;
    const texts: Readonly<Record<CheckOptions['format'], () => string>> = {
      text: () => checkText(printed(result)),
      compact: () => compactText(printed(result)),
      json: () => {
        const { findings, files } = printed(result);
        return json({ findings, files });
      },
      sarif: () => json(sarifLog(result, what.roots.length === 1 ? (what.roots[0] as string) : what.from, version)),
    };
    print(texts[options.format]());
    const limit = severities.indexOf(options.severity);
    if (result.findings.some((finding) => severities.indexOf(finding.severity) <= limit)) process.exitCode = 1;
  });

program
  .command('write')
  .description('writes the estimate and the schedule of every rig and fleet in files and folders')
  .argument('<paths...>', 'files or folders')
  .requiredOption('--out <folder>', 'the folder to write into')
  .addOption(asOfOption())
  .addOption(todayOption())
  .option('--name <name...>', 'only these rigs and fleets')
  .option('--overwrite', 'also overwrite files that a person has edited')
  .option('--json', 'print one JSON object that says what was written')
  .action(
    async (paths: string[], options: DateOptions & { out: string; name?: string[]; overwrite?: true; json?: true }) => {
      const { text, json, failed } = await writeDocuments(asked(paths, process.cwd()), datesOf(options), options);
      print(options.json ? `${JSON.stringify(json, undefined, 2)}\n` : text);
      if (failed) process.exitCode = 1;
    },
  );

program
  .command('compare')
  .description('says what changed between two git revisions: records, due dates, material, money, visits')
  .argument('<paths...>', 'files or folders, also such as are gone')
  .requiredOption('--from <revision>', 'the revision before')
  .option('--to <revision>', 'the revision after (default: the working tree)')
  .addOption(new Option('--format <format>', 'how it is printed').choices(['markdown', 'json']).default('markdown'))
  .addOption(asOfOption())
  .addOption(todayOption())
  .action(
    async (paths: string[], options: DateOptions & { from: string; to?: string; format: 'markdown' | 'json' }) => {
      const comparison = await compareRevisions(paths, datesOf(options), options);
      print(options.format === 'json' ? `${JSON.stringify(comparison, undefined, 2)}\n` : compareMarkdown(comparison));
    },
  );

program
  .command('format')
  .description(
    'puts files in form, white space only; exit code 1 when --check finds one that is not, or a line is not understood',
  )
  .argument('[paths...]', 'files or folders')
  .option('--check', 'write nothing, list what would change')
  .option('--stdin', 'format what comes in on the standard input, to the standard output')
  .action((paths: string[], { check = false, stdin = false }: { check?: boolean; stdin?: boolean }) => {
    if (stdin === paths.length > 0) throw new Misuse('Name files or folders, or `--stdin` alone.');
    if (stdin) {
      const { text, changed, left } = formatText(readFileSync(0));
      if (!check) print(text);
      for (const line of left) console.error(line);
      if (left.length > 0 || (check && changed)) process.exitCode = 1;
      return;
    }
    const result = formatFiles(asked(paths, process.cwd()), { check });
    print(result.text);
    if (result.damaged || (check && result.changed.length > 0)) process.exitCode = 1;
  });

program
  .command('add-record')
  .description('adds one record or plan to many rigs; shows what would be written, and writes with --write')
  .argument('<statement>', 'such as "sealed 2026-05-02 all with GreyLap"')
  .argument('[paths...]', 'files or folders (default: the current folder)')
  .requiredOption('--rigs <name...>', 'the rigs, by name or by a pattern such as "Te*"')
  .addOption(writeOption())
  .option('--json', 'print one JSON object')
  .addOption(todayOption())
  .action((statement: string, paths: string[], options: DateOptions & AddOptions) =>
    tell(addToRigs(statement, asked(orHere(paths), process.cwd()), datesOf(options), options), options),
  );

const kindArgument = () => new Argument('<kind>', 'what the table holds').choices(tableKinds);

program
  .command('import')
  .description('reads a table (CSV) into records; shows what would be written, and writes with --write')
  .addArgument(kindArgument())
  .argument('<file>', 'the table')
  .option('--into <folder>', 'the folder for new rigs', '.')
  .option('--use <file...>', 'files that new rigs use, such as models and materials')
  .addOption(writeOption())
  .option('--json', 'print one JSON object')
  .addOption(todayOption())
  .action((kind: TableKind, file: string, options: DateOptions & ImportOptions) =>
    tell(importFile(kind, file, datesOf(options), options, process.cwd()), options),
  );

program
  .command('export')
  .description('writes a table (CSV) of all rigs of files and folders, with the columns that import reads')
  .addArgument(kindArgument())
  .argument('[paths...]', 'files or folders (default: the current folder)')
  .option('--out <file>', 'write into a file')
  .action((kind: TableKind, paths: string[], options: ExportOptions) =>
    print(exportFile(kind, asked(orHere(paths), process.cwd()), options)),
  );

if (parentPort) serveJudging(parentPort, workerData);
else await run();

async function run(): Promise<void> {
  try {
    await program.parseAsync();
  } catch (error) {
    if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : 2;
    else if (error instanceof Misuse) {
      console.error(`rigseam: ${error.message}`);
      process.exitCode = 2;
    } else {
      console.error(`rigseam: ${(error as Error).message}`);
      process.exitCode = 2;
    }
  }
}
