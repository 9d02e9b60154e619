import type { Chance } from './chance.ts';

/** What the person says to one item of the plan. */
export interface DemoReply {
  readonly said: 'agreed' | 'declined' | 'not-affordable';
  readonly why?: string | undefined;
}

/** What became of one item since the visit at which it was agreed. */
export interface DemoUse {
  readonly use: 'used' | 'less' | 'stopped';
  readonly why?: string | undefined;
}

/** More than any plan holds. */
const ITEMS_AT_MOST = 12;
/** Assumed. */
const SAID = { agreed: 80, declined: 13, 'not-affordable': 7 } as const;
/** Of 20 adults at high risk, after a month: 6 as asked, 5 less than that, 9 not at all. */
const USED = { used: 6, less: 5, stopped: 9 } as const;
const DECLINED_WHY = ['does not like the taste', 'one thing at a time', 'tried it before', 'wants to think about it'];
const LESS_WHY = ['forgets in the evening', 'too many steps', 'only on work days'];
const STOPPED_WHY = ['taste', 'ran out and did not buy more', 'mouth felt sore', 'forgot', 'too many steps', 'price'];

/** One reply for each item of a plan, in its order; more of them than a plan has items. */
export function drawReplies(chance: Chance): readonly DemoReply[] {
  return Array.from({ length: ITEMS_AT_MOST }, () => {
    const said = chance.pickByShare<keyof typeof SAID>(SAID);
    return said === 'declined' ? { said, why: chance.pick(DECLINED_WHY) } : { said };
  });
}

/** One use for each item agreed at the visit before, in its order. */
export function drawUses(chance: Chance): readonly DemoUse[] {
  return Array.from({ length: ITEMS_AT_MOST }, () => {
    const use = chance.pickByShare<keyof typeof USED>(USED);
    if (use === 'used') return { use };
    return { use, why: chance.pick(use === 'less' ? LESS_WHY : STOPPED_WHY) };
  });
}
