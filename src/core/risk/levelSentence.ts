import type { Level, RiskResult } from './types.ts';

const MOST_NAMED = 3;

/**
 * What the list says, in words that do not say more than it does: the level as proposed or the reason why there is none, and what is
 * still open. Names the list with its year.
 * @param labelOf  words for an item id
 */
export function levelSentence(result: RiskResult, labelOf: (item: string) => string): string {
  const { screenName, level, possibleLevels, notYet, missing } = result;
  if (level === null) {
    // "At least low" would read as an all-clear, so the lowest level is left unsaid.
    const rest = possibleLevels.filter((l) => l !== notYet?.atLeast);
    const open = rest.length > 0 ? `: ${joinWords(rest)} not excluded` : '';
    return `Not yet assessable by ${screenName}${open}. Not known: ${nameSome(notYet?.missing ?? [], labelOf)}.`;
  }
  const others = possibleLevels.filter((l) => l !== level);
  if (others.length === 0)
    return `${capital(level)} proposed by ${screenName}${result.needsConfirmation ? ', by judgement: to be confirmed' : ''}.`;
  const deciding = missing.filter((m) => m.couldChangeLevel).map((m) => m.item);
  const why = nameSome(deciding.length > 0 ? deciding : missing.map((m) => m.item), labelOf);
  return `${capital(level)} proposed by ${screenName}, to be confirmed; ${joinWords(others)} not excluded. Not known: ${why}.`;
}

function nameSome(items: readonly string[], labelOf: (item: string) => string): string {
  const named = items.slice(0, MOST_NAMED).map(labelOf).join('; ');
  return items.length > MOST_NAMED ? `${named}; and ${items.length - MOST_NAMED} more` : named;
}

function joinWords(levels: readonly Level[]): string {
  return levels.length < 2 ? levels.join('') : `${levels.slice(0, -1).join(', ')} and ${levels.at(-1)}`;
}

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);
