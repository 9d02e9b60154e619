import { FEWEST_OF_ONE, type HandsLine, SIDE_BY_SIDE, sayRatio } from '../../../core/checks/compareHands.ts';
import { joinWords } from '../../format.ts';

/** One sentence over the picture of all members: about how it is done, never about who did it. */
export function sayFunnel(lines: readonly HandsLine[]): string {
  const enough = lines.filter(({ state }) => state !== 'too-few');
  if (enough.length === 0) return `No member has ${FEWEST_OF_ONE} controls yet, so nothing is said of hands.`;
  const apart = enough.filter(({ isApart }) => isApart);
  if (apart.length > 0) {
    const said = joinWords(apart.map(({ operator, ratio }) => `those of ${operator} are ${sayRatio(ratio)}`));
    return `Most controls do not depend on whose hands took them, but ${said}, more than chance brings. ${SIDE_BY_SIDE}`;
  }
  const few = lines.length - enough.length;
  const rest = few === 0 ? '' : ` Of ${few} more ${few === 1 ? 'member' : 'members'} there are too few to say.`;
  return enough.length === 1
    ? `The controls of ${enough[0]?.operator} lie where chance alone would put them.${rest}`
    : `The controls of ${joinWords(enough.map(({ operator }) => operator))} differ no more than chance brings.${rest}`;
}

/** One sentence over the picture of one member. */
export function sayMoving({ operator, controls, state, isApartLately, points }: HandsLine): string {
  if (state === 'too-few') return `${operator} has ${controls} so far; ${FEWEST_OF_ONE} controls are needed before anything is said.`;
  const lately = points.findLast(({ moving }) => moving !== undefined)?.moving?.ratio ?? 1;
  return isApartLately
    ? `The latest controls of ${operator} are ${sayRatio(lately)}, more than chance brings. ${SIDE_BY_SIDE}`
    : `The latest controls of ${operator} differ from those of all no more than chance brings.`;
}
