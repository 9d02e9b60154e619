import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { listFiles, type Passage, readJsonText, readLines, readMarkdownText, readProgramText, sourceFolder } from './prose.ts';

type Place = 'screen' | 'sentences' | 'leaflet' | 'chairside' | 'docs' | 'files';

interface BannedWord {
  readonly id: string;
  readonly pattern: string;
  readonly allow?: readonly string[];
  readonly in: readonly Place[];
  readonly reason: string;
  readonly hit: string;
  readonly fine: string;
}

interface BannedList {
  readonly words: readonly BannedWord[];
  readonly digests: { readonly reason: string; readonly sha256: readonly string[] };
}

const LIST_FILE = 'test/banned-words.json';
const list = JSON.parse(readFileSync(LIST_FILE, 'utf8').replaceAll('¦', '')) as BannedList;

const isCitation = (file: string) => /^src.content.sources[^/\\]*\.ts$/.test(file) || /^docs.sources\.md$/.test(file);
const passages = collectPassages();

/** What each place holds. A title in a citation is quoted as printed, so citations are looked at only as files. */
function collectPassages(): Readonly<Record<Place, readonly Passage[]>> {
  const program = listFiles('src', new Set(['.ts', '.tsx'])).filter((file) => !/\.test\.tsx?$/.test(file) && !isCitation(file));
  const sentences = [...program.flatMap((file) => readProgramText(file)), ...listFiles('src', new Set(['.json'])).flatMap(readJsonText)];
  const markdown = ['.', 'docs', 'examples'].flatMap((folder) =>
    existsSync(folder) ? listFiles(folder, new Set(['.md'])).filter((file) => folder !== '.' || !/[\\/]/.test(file)) : [],
  );
  const examples = existsSync('examples') ? listFiles('examples', new Set(['.json'])) : [];
  return {
    screen: [...sentences.filter(({ file }) => sourceFolder(file) === 'web'), ...readLines('index.html')],
    sentences: sentences.filter(({ file }) => sourceFolder(file) !== 'web'),
    leaflet: sentences.filter(({ file }) => /^src.((core|content).leaflet|content.texts)/.test(file)),
    chairside: sentences.filter(({ file }) =>
      /^src.(web.screens.(Visit|Swab|Today)|core.reading|content.(swabConditions|questions))/.test(file),
    ),
    docs: [...markdown.filter((file) => !isCitation(file)).flatMap(readMarkdownText), ...examples.flatMap(readJsonText)],
    files: listFiles('.').flatMap(readLines),
  };
}

/** The text without what is allowed, so that only what is left can be found. */
function findWord({ pattern, allow = [] }: BannedWord, text: string): string | undefined {
  const rest = allow.reduce((t, allowed) => t.replace(new RegExp(allowed, 'gi'), ' '), text);
  return new RegExp(pattern, 'i').exec(rest)?.[0];
}

function findOwnedWord(text: string, digests: ReadonlySet<string>): string | undefined {
  const words = text.toLowerCase().match(/[\p{L}\d]+(-[\p{L}\d]+)*/gu) ?? [];
  return words.find((word) => digests.has(createHash('sha256').update(word).digest('hex')));
}

const tell = ({ file, line, text }: Passage, word: string) => `${file}:${line}: "${word}" in: ${text.trim().slice(0, 120)}`;

describe('every place has text to look at', () => {
  test.each(Object.keys(passages) as Place[])('%s', (place) => {
    expect(passages[place].length).toBeGreaterThan(0);
  });
});

describe.each(list.words)('$id', (word) => {
  test('is not said', () => {
    const found = word.in.flatMap((place) =>
      passages[place].flatMap((passage) => {
        const hit = findWord(word, passage.text);
        return hit === undefined ? [] : [tell(passage, hit)];
      }),
    );
    expect(found, word.reason).toEqual([]);
  });

  test('is found where it stands, and only there', () => {
    expect(findWord(word, word.hit)).toBeDefined();
    expect(findWord(word, word.fine)).toBeUndefined();
    expect(word.reason).not.toBe('');
  });
});

describe('words that belong to somebody', () => {
  const digests = new Set(list.digests.sha256);

  test('are not said', () => {
    const said = (['screen', 'sentences', 'docs'] as const).flatMap((place) =>
      passages[place].flatMap((passage) => {
        const hit = findOwnedWord(passage.text, digests);
        return hit === undefined ? [] : [tell(passage, hit)];
      }),
    );
    expect(said, list.digests.reason).toEqual([]);
  });

  test('are found by their digest', () => {
    const one = new Set([createHash('sha256').update('brandname').digest('hex')]);
    expect(findOwnedWord('Use BrandName, twice', one)).toBe('brandname');
    expect(findOwnedWord('Use brandnames', one)).toBeUndefined();
    expect(list.digests.sha256.every((digest) => /^[0-9a-f]{64}$/.test(digest))).toBe(true);
  });
});

describe('reading a program', () => {
  const read = (text: string) => readProgramText('a.tsx', text).map((passage) => passage.text.trim());

  test('takes what is shown', () => {
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the text of a program that holds a template
    expect(read('export const A = () => <p title="A kit">Our kit {`of ${n} kits`}</p>;')).toEqual(['A kit', 'Our kit', 'of … kits']);
    expect(read(`const a = { label: 'kit' };`)).toEqual(['kit']);
    expect(read(`const a = { en: 'Kit' } as const satisfies X;`)).toEqual(['Kit']);
    expect(read(`throw new Error('the kit is gone');`)).toEqual(['the kit is gone']);
  });

  test('leaves names, ids, styles, types and modules', () => {
    expect(read(`import { a } from 'my kit/b c'; type K = 'my kit'; const system = { kit: 'root-lesion' };`)).toEqual([]);
    expect(read('const A = () => <p className="kit system" style={{ fontFamily: "Kit, system-ui" }} />;')).toEqual([]);
  });
});
