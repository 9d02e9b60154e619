import type { UsedSince } from '../../core/visit/types.ts';
import type { Chance } from './chance.ts';

/** What the person says to one item of the plan. */
export interface DemoReply {
  readonly said: 'agreed' | 'declined' | 'not-affordable';
  readonly why?: string | undefined;
}

/** More than any plan holds. */
const ITEMS_AT_MOST = 12;
/** Assumed. */
const SAID = { agreed: 80, declined: 13, 'not-affordable': 7 } as const;
/** Of 20 adults at high risk, after a month: 6 as asked, 5 less than that, 9 not at all; that 3 of these never began is assumed. */
const USED = { 'as-agreed': 6, 'less-often': 5, stopped: 6, 'not-begun': 3 } as const;
const DECLINED_WHY = ['does not like the taste', 'one thing at a time', 'tried it before', 'wants to think about it'];
const NOT_USED_WHY = {
  'less-often': ['forgets in the evening', 'too many steps', 'only on work days'],
  stopped: ['taste', 'ran out and did not buy more', 'mouth felt sore', 'forgot', 'too many steps', 'price'],
  'not-begun': ['did not buy it', 'was not sure how', 'forgot'],
} as const;

/** One reply for each item of a plan, in its order; more of them than a plan has items. */
export function drawReplies(chance: Chance): readonly DemoReply[] {
  return Array.from({ length: ITEMS_AT_MOST }, () => {
    const said = chance.pickByShare<keyof typeof SAID>(SAID);
    return said === 'declined' ? { said, why: chance.pick(DECLINED_WHY) } : { said };
  });
}

/** One for each item agreed at the visit before, in its order: what became of it since. */
export function drawUses(chance: Chance): readonly UsedSince[] {
  return Array.from({ length: ITEMS_AT_MOST }, () => {
    const adherence = chance.pickByShare<keyof typeof USED>(USED);
    if (adherence === 'as-agreed') return { adherence };
    return { adherence, why: chance.pick(NOT_USED_WHY[adherence]) };
  });
}
