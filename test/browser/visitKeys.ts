import type { Page } from 'playwright-core';

/** A pair of hands that only has keys, and counts them. */
export interface Hands {
  readonly keys: () => number;
  readonly press: (key: string) => Promise<void>;
  /** One key per sign. */
  readonly type: (text: string) => Promise<void>;
}

export function handsOn(page: Page): Hands {
  let count = 0;
  const press = async (key: string) => {
    count += 1;
    await page.keyboard.press(key);
  };
  return {
    keys: () => count,
    press,
    type: async (text) => {
      for (const sign of text) await press(sign);
    },
  };
}

interface Focus {
  readonly scope: string | null;
  readonly line: string | null;
  /** yes-no, digit, choice, number, list, text or none, read from the answers that the page offers. */
  readonly takes: string | null;
  readonly canReconfirm: boolean;
}

/** Where the focus stands and what the page offers there: what a person working by keyboard sees. */
export function readFocus(page: Page): Promise<Focus> {
  return page.evaluate(() => {
    const at = document.activeElement;
    const scope = at?.closest('[data-scope]');
    const line = at?.closest('[data-line]');
    const answers = [...(line?.querySelectorAll('.answer') ?? [])].map((button) => button.getAttribute('aria-keyshortcuts'));
    const takes = line?.querySelector('.picker')
      ? 'list'
      : line?.querySelector('[data-entry]')
        ? 'entry'
        : answers.includes('y')
          ? 'yes-no'
          : answers.includes('1')
            ? 'digit'
            : null;
    return {
      scope: scope?.getAttribute('data-scope') ?? null,
      line: line?.getAttribute('data-line') ?? null,
      takes,
      canReconfirm: scope?.querySelector('.reconfirm') !== null && scope !== undefined && scope !== null,
    };
  });
}

/** The key that answers an open line in the least striking way: no, one, the first choice, none. */
const PLAIN_ANSWERS: Readonly<Record<string, string>> = { 'yes-no': 'n', digit: '1', list: '0', entry: 'd' };

/** By the name of a line: what is typed there, a number or text with Enter behind it, of a list each name that is ticked. */
export type Answers = Readonly<Record<string, string | readonly string[]>>;

async function answerLine(page: Page, hands: Hands, takes: string | null, answer: string | readonly string[]): Promise<void> {
  if (typeof answer === 'string') {
    await hands.type(answer);
    if (takes === 'entry') await hands.press('Enter');
    return;
  }
  await hands.press('Enter');
  for (const name of answer) {
    await hands.type(name);
    await page.getByRole('option', { name }).first().waitFor();
    await hands.press('Enter');
  }
  await hands.press('Escape');
}

/**
 * Works through the groups of questions until the focus leaves them: the answers that are given, else "=" where something was carried,
 * else the plainest answer where one is wanted.
 */
export async function answerQuestions(page: Page, hands: Hands, scopes: readonly string[], answers: Answers = {}): Promise<void> {
  for (let tries = 0; tries < 40; tries += 1) {
    const focus = await readFocus(page);
    if (focus.scope === null || !scopes.includes(focus.scope)) return;
    const own = focus.line === null ? undefined : answers[focus.line];
    if (own !== undefined) await answerLine(page, hands, focus.takes, own);
    else if (focus.canReconfirm) await hands.press('=');
    else if (focus.line === 'allExamined') await hands.press('y');
    else if (focus.takes) await hands.press(PLAIN_ANSWERS[focus.takes] ?? 'd');
    else return;
  }
  throw new Error('the questions do not end');
}
