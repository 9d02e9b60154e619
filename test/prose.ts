import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, sep } from 'node:path';
import { parseSync } from 'vite';

/** One piece of text that somebody reads, and where it stands. */
export interface Passage {
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

/** `.git` is a file in a linked working tree. */
const SKIPPED = new Set(['node_modules', 'dist', 'data', 'coverage', '.git']);
const TEXT_FILES = new Set([
  '.ts',
  '.tsx',
  '.mjs',
  '.mts',
  '.js',
  '.json',
  '.md',
  '.txt',
  '.css',
  '.html',
  '.sh',
  '.py',
  '.r',
  '.R',
  '.csv',
  '',
]);

/** Files below a folder with one of these extensions, tests and built or installed things left out; sorted. */
export function listFiles(folder: string, extensions: ReadonlySet<string> = TEXT_FILES): readonly string[] {
  return readdirSync(folder, { withFileTypes: true })
    .flatMap((entry) => {
      const path = folder === '.' ? entry.name : join(folder, entry.name);
      if (SKIPPED.has(entry.name) || entry.name.startsWith('dist.')) return [];
      if (entry.isDirectory()) return listFiles(path, extensions);
      return extensions.has(extname(entry.name)) ? [path] : [];
    })
    .sort();
}

/** Everything in a program file that may reach a reader's eye: JSX text, and strings that read as words rather than as ids or names. */
export function readProgramText(file: string, text = readFileSync(file, 'utf8')): readonly Passage[] {
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file} cannot be parsed: ${errors[0]?.message}`);
  const passages: Passage[] = [];
  visit(program, undefined, (node, propertyName) => {
    const found = textOf(node);
    if (found === undefined) return;
    const isShown = node.type === 'JSXText' || SHOWN_PROPERTIES.has(propertyName ?? '');
    if (found.trim() !== '' && (isShown || readsAsWords(found))) passages.push({ file, line: lineAt(text, node.start), text: found });
  });
  return passages;
}

/** Properties whose value is shown even when it is one small word. */
const SHOWN_PROPERTIES = new Set([
  'label',
  'prompt',
  'title',
  'text',
  'name',
  'says',
  'because',
  'note',
  'en',
  'es',
  'screenName',
  'headline',
  'unit',
]);
/** Attributes and properties that hold no words: style classes, ids, addresses, modules. */
const CODE_PROPERTIES = new Set([
  'className',
  'class',
  'id',
  'htmlFor',
  'style',
  'href',
  'src',
  'type',
  'pattern',
  'path',
  'd',
  'viewBox',
  'key',
]);

interface Node {
  readonly type: string;
  readonly start: number;
  readonly [field: string]: unknown;
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && 'type' in value && 'start' in value;

/** Calls `see` on each node, with the name of the property or attribute whose value it is part of. */
function visit(value: unknown, propertyName: string | undefined, see: (node: Node, propertyName: string | undefined) => void): void {
  if (Array.isArray(value)) {
    for (const one of value) visit(one, propertyName, see);
    return;
  }
  if (!isNode(value) || value.type.startsWith('Import') || value.type.startsWith('TS') === true) {
    // A type says nothing to a reader, but `x as T` and `x satisfies T` wrap an expression that may.
    if (isNode(value) && value.type.startsWith('TS') && 'expression' in value) visit(value.expression, propertyName, see);
    return;
  }
  const name = value.type === 'Property' || value.type === 'JSXAttribute' ? nameOf(value.key ?? value.name) : propertyName;
  if (name !== undefined && CODE_PROPERTIES.has(name)) return;
  see(value, name);
  for (const [field, child] of Object.entries(value)) {
    const isName = (field === 'key' || field === 'name' || field === 'source') && value.type !== 'JSXText';
    if (!isName) visit(child, name, see);
  }
}

function nameOf(node: unknown): string | undefined {
  if (!isNode(node)) return undefined;
  return typeof node.name === 'string' ? node.name : typeof node.value === 'string' ? node.value : undefined;
}

/** A template is one sentence: what is filled in stands as an ellipsis. */
function textOf(node: Node): string | undefined {
  if ((node.type === 'Literal' || node.type === 'JSXText') && typeof node.value === 'string') return node.value;
  if (node.type !== 'TemplateLiteral') return undefined;
  const quasis = node.quasis as readonly { readonly value: { readonly cooked?: string | null } }[];
  return quasis.map((quasi) => quasi.value.cooked ?? '').join('…');
}

/** `root-lesion`, `answers.can_spit` and `font-family: system-ui` are names; `Shelf` and `two words` are read. */
function readsAsWords(text: string): boolean {
  return /[\p{L}\d…]\s+[\p{L}\d…]/u.test(text) || /^\p{Lu}\p{Ll}/u.test(text);
}

/** Every string value of a JSON file, at the line of its first appearance. */
export function readJsonText(file: string): readonly Passage[] {
  const text = readFileSync(file, 'utf8');
  const strings: string[] = [];
  JSON.parse(text, (_, value: unknown) => {
    if (typeof value === 'string') strings.push(value);
    return value;
  });
  return strings.map((found) => ({ file, line: lineAt(text, Math.max(0, text.indexOf(JSON.stringify(found)))), text: found }));
}

/** A page of Markdown, paragraph by paragraph, without code and addresses. */
export function readMarkdownText(file: string): readonly Passage[] {
  const text = readFileSync(file, 'utf8');
  const withoutCode = text
    .replace(/^```[\s\S]*?^```/gm, (block) => block.replace(/[^\n]/g, ''))
    .replace(/`[^`\n]*`/g, '')
    .replace(/https?:\/\/\S+/g, '')
    .replace(/\]\([^)]*\)/g, ']');
  let line = 1;
  return withoutCode.split('\n\n').map((paragraph) => {
    const passage = { file, line, text: paragraph };
    line += paragraph.split('\n').length + 1;
    return passage;
  });
}

/** A whole file line by line, comments and code included. */
export function readLines(file: string): readonly Passage[] {
  return readFileSync(file, 'utf8')
    .split('\n')
    .map((text, i) => ({ file, line: i + 1, text }));
}

function lineAt(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length;
}

/** The folder of `src` that a file stands in, or undefined. */
export function sourceFolder(file: string): string | undefined {
  const [first, second] = file.split(sep);
  return first === 'src' ? second : undefined;
}
