import type { SourceRef } from '../visit/answer.ts';
import type { FindNeedsInput } from './findNeeds.ts';
import { type NeedState, NOT_CONFIRMED, needed, notNeeded, OURS, undecided } from './needStates.ts';
import type { CareRow } from './tables.ts';
import type { ConfirmedLevel, NeedKind } from './types.ts';

const SWEETENER_FROM_YEARS = 5;
/** No extra fluoride and no antimicrobial at home below. */
const HOME_EXTRAS_FROM_YEARS = 6;

/** The row of the confirmed list's table of care at this age; undefined before a level is confirmed, or where there is no such table. */
export function findCareRow({ confirmed, facts, tables }: FindNeedsInput): CareRow | undefined {
  if (!confirmed) return undefined;
  return tables.care.find(
    (row) =>
      row.protocols.includes(confirmed.protocol) &&
      row.level === confirmed.level &&
      facts.ageYears >= row.fromAgeYears &&
      facts.ageYears < row.belowAgeYears,
  );
}

/** What the table of care says of a need. */
export function fromCare(kind: NeedKind, input: FindNeedsInput, care: CareRow | undefined): NeedState {
  const { confirmed, facts } = input;
  if (!confirmed) return undecided(NOT_CONFIRMED);
  if (kind === 'sweetener' && facts.ageYears < SWEETENER_FROM_YEARS) return notNeeded('Nothing to chew or suck under 5.');
  if (kind === 'fluoride-extra' && facts.ageYears < HOME_EXTRAS_FROM_YEARS)
    return notNeeded('Under 6 extra fluoride is for the professional.');
  const given = care?.needs.find((need) => need.kind === kind);
  if (care && given) return needed(`Confirmed level ${confirmed.level}: added by ${care.table}.`, [care.source], given.agentIds);
  if (kind === 'professional-fluoride' && isOfferedToAllChildren(input)) {
    const sources: readonly SourceRef[] = [{ key: 'preventionToolkit', status: 'read', note: 'secondary' }];
    return needed('Age 3 to 17: the national toolkit gives varnish twice a year at every level.', sources, [['F_VARNISH']]);
  }
  if (!care) return undecided(`Confirmed level ${confirmed.level}: no table of care for this list.`);
  return notNeeded(`Confirmed level ${confirmed.level}: not in ${care.table}.`, [care.source]);
}

/** A guideline of 2018 prefers daily paste of 5,000 ppm for root lesions, whatever the list says. */
export function rootLesionNeed({ confirmed, findings, facts }: FindNeedsInput): NeedState | undefined {
  const isThere = findings.some((f) => f.kind === 'root-lesion' && f.activity !== 'inactive');
  if (!confirmed || !isThere || facts.ageYears < HOME_EXTRAS_FROM_YEARS) return undefined;
  return needed(
    'Root lesion: a guideline of 2018 prefers daily paste of 5,000 ppm fluoride.',
    [{ key: 'slayton2018', status: 'read' }],
    [['F_PASTE_5000'], ['F_PASTE_2800']],
  );
}

const STRONG_PASTE_FROM_YEARS = 10;

/** After radiotherapy of head or neck, strong paste for life, whatever the list says; under 10 a specialist decides. */
export function radiotherapyNeed({ facts }: FindNeedsInput): NeedState | undefined {
  if (!facts.conditions?.includes('head-neck-radiotherapy') || facts.ageYears < STRONG_PASTE_FROM_YEARS) return undefined;
  return needed(
    'Radiotherapy of head or neck: high-fluoride paste for life by UK advice of 2022, whatever the level.',
    [{ key: 'radiotherapy2022', status: 'read', note: 'paste licensed from 10 or 16 years by strength' }],
    [['F_PASTE_5000'], ['F_PASTE_2800']],
  );
}

const isOfferedToAllChildren = ({ facts, jurisdiction }: FindNeedsInput): boolean =>
  jurisdiction === 'UK' && facts.ageYears >= 3 && facts.ageYears < 18;

/** The one question that the reading speaks to. */
export function antimicrobialNeed({ confirmed, reading, facts }: FindNeedsInput, care: CareRow | undefined): NeedState {
  if (!confirmed) return undecided(NOT_CONFIRMED);
  if (facts.ageYears < HOME_EXTRAS_FROM_YEARS) return notNeeded('No antimicrobial product at home under 6.');
  const verdict = reading?.counted ? reading.verdict : undefined;
  const isGiven = care?.needs.some((need) => need.kind === 'antimicrobial') ?? false;
  const sources = care && isGiven ? [care.source] : [OURS];
  // It could have been above, which leaves the question open at every level.
  if (reading?.state === 'void') return undecided('The reading is not counted.', sources);
  if (verdict === undefined) return isGiven ? undecided('No reading that counts.', sources) : notNeeded(notAtLevel(confirmed), sources);
  if (verdict === 'below') return notNeeded("Reading below this meter's cut-off.", sources);
  if (verdict === 'too-close') return undecided('Reading too close to call.', sources);
  if (isGiven)
    return needed(
      `Reading above this meter's cut-off, level ${confirmed.level}: talk about it. Evidence that antimicrobials lower decay is weak and mixed.`,
      sources,
    );
  return undecided(`Reading above this meter's cut-off. ${notAtLevel(confirmed)}`, sources);
}

const notAtLevel = ({ level }: ConfirmedLevel): string => `At level ${level} no table of care adds an antimicrobial.`;
