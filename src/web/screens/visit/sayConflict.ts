import type { RegimenConflict } from '../../../core/regimen/types.ts';
import { capitalise, joinWords } from '../../format.ts';
import { sayNeed } from './sayRegimen.ts';

type Constraint = RegimenConflict['constraints'][number];

export interface SaidConflict {
  /** "Fluoride extra and sealing cannot all be met", "Saliva cannot be met". */
  readonly headline: string;
  readonly because: readonly Constraint[];
  /** Any one of these would resolve it. */
  readonly resolvedBy: readonly string[];
}

/** Why a need stays open, in sentences; what is private is left out where it must not be read. */
export function sayConflict({ needs, constraints }: RegimenConflict, isPrivateHidden: boolean): SaidConflict {
  const [wanted = '', ...others] = needs.map(sayNeed);
  const headline =
    others.length === 0 ? `${capitalise(wanted)} cannot be met` : `${capitalise(joinWords([wanted, ...others]))} cannot all be met`;
  const shown = constraints.filter((constraint) => !(isPrivateHidden && constraint.private));
  return {
    headline,
    because: shown,
    resolvedBy: [...new Set(shown.flatMap(resolutionOf))],
  };
}

/** Rules of safety and limits of fluoride are not for changing; everything else has a way out. */
function resolutionOf({ id, says }: Constraint): readonly string[] {
  const [kind = '', ...rest] = id.split(' ');
  const about = rest.join(' ');
  if (kind === 'shelf') return [`another pack for ${sayNeed(about)} on the shelf`];
  if (kind === 'stock') return [`the pack in stock again (${says})`];
  if (kind === 'tasks') return ['more tasks a day accepted'];
  if (kind === 'signed') return ['the signature taken back'];
  if (kind === 'refused') return ['the refusal taken back'];
  if (says.startsWith('not known yet')) return ['the missing answer asked'];
  return [];
}
