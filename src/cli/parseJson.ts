import { AnswerError } from './failure.ts';

/** @throws AnswerError in one sentence, where the text is no JSON. */
export function parseJson(text: string): unknown {
  if (text.trim() === '') throw new AnswerError('', 'is empty, where a JSON object was expected');
  try {
    // A byte order mark is what some editors put before the first character.
    return JSON.parse(text.replace(/^\uFEFF/, '')) as unknown;
  } catch (error) {
    throw new AnswerError('', `is not valid JSON (${sayWhere(text, error)})`, 'INPUT_INVALID', { cause: error });
  }
}

/** Place of the fault, from the engine's message where it names one; engines word it differently. */
function sayWhere(text: string, error: unknown): string {
  const position = /position (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
  if (position === undefined) return /end of JSON input/.test(String(error)) ? 'it breaks off' : 'a character that does not belong there';
  const before = text.slice(0, Number(position));
  const line = before.split('\n').length;
  const column = before.length - before.lastIndexOf('\n');
  return text.includes('\n') ? `at line ${line}, column ${column}` : `at character ${column}`;
}
