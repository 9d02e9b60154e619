import { takenPosition } from '../../../core/regimen/disagreement/settleTables.ts';
import type { SettableDisagreement } from '../../../core/regimen/disagreement/types.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { capitalise } from '../../format.ts';

/** "From 8 years, as the national toolkit of 2021 offers it: the stricter, as long as nothing is chosen." */
export function sayTaken(row: SettableDisagreement, { disagreements = {} }: Pick<PracticeSettings, 'disagreements'>): string {
  const { id, says } = takenPosition(row, disagreements);
  const isChosen = disagreements[row.id] === id;
  const stands = row.unsetBecause === 'stricter' ? 'Not chosen, so the stricter holds' : 'Not chosen, so our proposal holds';
  return isChosen ? `${capitalise(says)}: chosen by this practice.` : `${stands}: ${says}.`;
}

/** The same, with what the other side holds. */
export function sayBothSides(row: SettableDisagreement, settings: Pick<PracticeSettings, 'disagreements'>): string {
  const taken = takenPosition(row, settings.disagreements);
  const others = row.positions.filter((position) => position !== taken).map(({ says }) => says);
  return `${sayTaken(row, settings)} The other side: ${others.join('; or ')}.`;
}

/** The settings with one position taken; undefined = not chosen any more. */
export function setPosition(settings: PracticeSettings, id: string, position: string | undefined): PracticeSettings {
  const { [id]: _before, ...others } = settings.disagreements ?? {};
  return { ...settings, disagreements: position === undefined ? others : { ...others, [id]: position } };
}
