/** Makes docs/sources.md from the sources in src/content and from every place that names one. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
export const PAGE_FILE = join(ROOT, 'docs', 'sources.md');
const STATUSES = ['read', 'memory', 'mixed', 'common-practice', 'derived', 'proposal'] as const;
type Status = (typeof STATUSES)[number];

interface Source {
  readonly cite: string;
  readonly read: string;
}
/** One mention of a source. A docstring tag has no status. */
interface Mention {
  readonly key: string;
  readonly status: Status | undefined;
  readonly file: string;
}

export interface SourceIndex {
  readonly sources: ReadonlyMap<string, Source>;
  readonly mentions: readonly Mention[];
  /** Keys that stand in two tables. */
  readonly twice: readonly string[];
}

/** Loads every module of src/content, and looks through the text of all of src. */
export async function indexSources(): Promise<SourceIndex> {
  const files = (readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' }) as string[])
    .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file))
    .map((file) => join('src', file))
    .sort();
  const sources = new Map<string, Source>();
  const twice: string[] = [];
  const texts = new Map(files.map((file) => [file, readFileSync(join(ROOT, file), 'utf8')]));
  const mentions = [...texts].flatMap(([file, text]) => mentionsInText(file, text));
  for (const file of files.filter((name) => name.startsWith(join('src', 'content')))) {
    const module = (await import(pathToFileURL(join(ROOT, file)).href)) as Record<string, unknown>;
    if (/^sources(-\w+)?\.ts$/.test(file.split(sep).at(-1) ?? '')) {
      for (const table of Object.values(module)) {
        for (const [key, source] of Object.entries(table as Record<string, Source>)) {
          if (sources.has(key)) twice.push(key);
          sources.set(key, source);
        }
      }
      // A list of tables exports what other files wrote: only the file that names the key counts.
    } else mentions.push(...mentionsInValue(module, file).filter(({ key }) => texts.get(file)?.includes(key)));
  }
  return { sources, mentions, twice };
}

/** `{ key: 'x', status: 'read' }` and `@source x, table 2`. */
function mentionsInText(file: string, text: string): Mention[] {
  const refs = [...text.matchAll(/\bkey: '([^']+)',\s*status: '([^']+)'/g)].flatMap(([, key, status]) => toMention(key, status, file));
  const tags = [...text.matchAll(/@source\s+(.+)/g)].flatMap(([, list = '']) =>
    keysOfTag(list).map((key) => ({ key, status: undefined, file })),
  );
  return [...refs, ...tags];
}

/** "davies1962, table 2; whiteley2015": keys are single words, places are not. A tag without a key stands for itself, and is refused. */
function keysOfTag(list: string): readonly string[] {
  const parts = list
    .replace(/\*\/.*/, '')
    .split(/[;,]/)
    .map((part) => part.trim());
  const keys = parts.filter((part) => /^\S+$/.test(part));
  return keys.length > 0 ? keys : [list.trim()];
}

/** A reference with one of our statuses; other objects have a key and a status too. */
function toMention(key: unknown, status: unknown, file: string): Mention[] {
  const known = STATUSES.find((one) => one === status);
  return typeof key === 'string' && known !== undefined ? [{ key, status: known, file }] : [];
}

/** References inside tables, also those that a constant holds. */
function mentionsInValue(value: unknown, file: string, seen = new Set<unknown>()): Mention[] {
  if (typeof value !== 'object' || value === null || seen.has(value)) return [];
  seen.add(value);
  const here = value as { key?: unknown; status?: unknown };
  return [...toMention(here.key, here.status, file), ...Object.values(value).flatMap((part) => mentionsInValue(part, file, seen))];
}

/** The page as it should stand. */
export function buildSourcesPage({ sources, mentions }: SourceIndex): string {
  const keys = [...sources.keys()].sort((a, b) => a.localeCompare(b, 'en', { sensitivity: 'base' }) || (a < b ? -1 : 1));
  const used = keys.filter((key) => mentions.some((mention) => mention.key === key));
  const unused = keys.filter((key) => !used.includes(key));
  const counts = STATUSES.map((status) => {
    const files = new Set(mentions.filter((m) => m.status === status).map(({ key, file }) => `${key} ${file}`));
    return `| ${status} | ${STATUS_MEANINGS[status]} | ${files.size} |`;
  });
  return [
    '# Sources',
    '',
    'Made by `npm run docs:sources` from `src/content`; do not edit. For each source: how it is cited, how much of it was read, and where it is used with which status.',
    '',
    'A status says how far a statement is trusted, and stands beside it on the screen. Nothing whose status is "memory" is printed for a patient as a figure or a claim of benefit; a caution is printed whatever its status.',
    '',
    '| status | meaning | uses (source and file) |',
    '|---|---|---|',
    ...counts,
    '',
    '## Used',
    '',
    ...used.flatMap((key) => entry(key, sources, mentions)),
    ...(unused.length > 0
      ? ['## Listed, not used by a table or a computation', '', ...unused.flatMap((key) => entry(key, sources, mentions))]
      : []),
  ]
    .join('\n')
    .replace(/\n+$/, '\n');
}

const STATUS_MEANINGS: Readonly<Record<Status, string>> = {
  read: 'read in the page that is cited, or in the part of it named there',
  memory: 'recalled, not looked up again',
  mixed: 'partly read, partly recalled',
  'common-practice': 'what the trade takes as given; no published source',
  derived: 'computed from other entries',
  proposal: 'our own, where the source leaves it to judgement',
};

function entry(key: string, sources: SourceIndex['sources'], mentions: readonly Mention[]): string[] {
  const source = sources.get(key);
  const uses = [
    ...new Set(mentions.filter((m) => m.key === key).map(({ status, file }) => `${status ?? 'named'} in ${shortName(file)}`)),
  ].sort();
  return [
    `### ${key}`,
    '',
    `${source?.cite}`,
    '',
    `Read: ${source?.read}.`.replace(/\.\.$/, '.'),
    ...(uses.length > 0 ? ['', `Used: ${uses.join('; ')}.`] : []),
    '',
  ];
}

function shortName(file: string): string {
  return relative('src', file)
    .split(sep)
    .join('/')
    .replace(/\.tsx?$/, '');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  writeFileSync(PAGE_FILE, buildSourcesPage(await indexSources()));
}
