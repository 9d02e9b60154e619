import { buildLeaflet } from '../leaflet/buildLeaflet.ts';
import type { Leaflet, LeafletLanguage } from '../leaflet/types.ts';
import { signedByOf } from '../regimen/buildLine.ts';
import { isSignature } from '../regimen/mayRelease.ts';
import { nameRefused } from '../regimen/proposePlan.ts';
import { holdsOn } from '../regimen/signatureCover.ts';
import type { Plan, PlanLine, SignedBy } from '../regimen/types.ts';
import { leafletStrip } from './leafletStrip.ts';
import { leafletUses } from './leafletUses.ts';
import { isAskedAtAge } from './personFacts.ts';
import { listReleased } from './privacy.ts';
import type { VisitAssessment, VisitInput } from './types.ts';
import type { VisitContent } from './visitContent.ts';

type LeafletContent = Pick<VisitContent, 'leaflet' | 'acidDay' | 'questions' | 'regimen' | 'dayUses'>;

/**
 * The assessment of a closed visit with the signatures and refusals as they stand now: a dentist may come to an item after the visit was
 * closed, and may take a signature back. Nothing else of the stored result changes; the leaflet is made again only if a release did.
 * @param stored  as it was stored when the visit closed; only its lines that need a signature are looked at
 * @param input   of the same visit, with `signed` and `refused` as they are now
 */
export function withReleases(stored: VisitAssessment, input: VisitInput, content: LeafletContent): VisitAssessment {
  const { visit, practice } = input;
  const refused = (visit.refused ?? []).filter((r) => stored.plan.lines.some((line) => line.shelfItemId === r.shelfItemId));
  const lines = stored.plan.lines
    .filter((line) => !refused.some((r) => r.shelfItemId === line.shelfItemId))
    .map((line) => releaseOf(line, visit));
  const plan: Plan = { ...stored.plan, lines, refused: nameRefused(visit.refused ?? [], practice.shelf) };
  if (JSON.stringify(lines) === JSON.stringify(stored.plan.lines)) return { ...stored, plan };
  return { ...stored, plan, ...leafletsOf({ ...stored, plan }, input, content) };
}

function releaseOf(line: PlanLine, { signed, onDate }: VisitInput['visit']): PlanLine {
  if (line.state === 'proposed') return line;
  const signature = signed.find((s) => s.shelfItemId === line.shelfItemId && isSignature(s) && holdsOn(s, onDate));
  const { signedBy: _before, ...rest } = line;
  return signature ? { ...rest, state: 'signed', signedBy: signedByOf(signature) } : { ...rest, state: 'waiting-for-signature' };
}

/** What a page of a later day leaves out: a signature that held to a day before it. */
export interface PastSignature {
  readonly shelfItemId: string;
  readonly name: string;
  readonly signedBy: SignedBy;
}

/**
 * An assessment as it may be printed today: an item whose signature held to an earlier day waits for a new one, and stands on no page.
 * @param today  ISO local date
 */
export function printedOn(
  assessment: VisitAssessment,
  input: VisitInput,
  content: LeafletContent,
  today: string,
): { readonly assessment: VisitAssessment; readonly past: readonly PastSignature[] } {
  const past = assessment.plan.lines.flatMap(({ shelfItemId, name, state, signedBy }) =>
    state === 'signed' && signedBy && !holdsOn(signedBy, today) ? [{ shelfItemId, name, signedBy }] : [],
  );
  if (past.length === 0) return { assessment, past };
  const lines = assessment.plan.lines.map((line): PlanLine => {
    const { signedBy: _past, ...rest } = line;
    return past.some(({ shelfItemId }) => shelfItemId === line.shelfItemId) ? { ...rest, state: 'waiting-for-signature' } : line;
  });
  const plan: Plan = { ...assessment.plan, lines };
  return { assessment: { ...assessment, plan, ...leafletsOf({ ...assessment, plan }, input, content) }, past };
}

/**
 * The page that a person takes home, from an assessment of the visit; and what is printed: the same page for each home in its language,
 * or, without homes, that one page.
 * @throws RangeError as `buildLeaflet`
 */
export function leafletsOf(
  assessment: LeafletParts,
  input: VisitInput,
  content: LeafletContent,
): Pick<VisitAssessment, 'leaflet' | 'leaflets'> {
  const leaflet = leafletIn(input.visit.language, assessment, input, content);
  const ofHomes = (input.person.homes ?? []).map(({ name, language }) => leafletIn(language, assessment, input, content, name));
  return { leaflet, leaflets: ofHomes.length === 0 ? [leaflet] : ofHomes };
}

type LeafletParts = Pick<VisitAssessment, 'plan' | 'facts' | 'needs' | 'ageYears' | 'mouth'>;

/** One page in a language, whatever the language of the visit; for one home, if it is named. */
export function leafletIn(
  language: LeafletLanguage,
  { plan, facts, needs, ageYears, mouth }: LeafletParts,
  input: VisitInput,
  content: LeafletContent,
  home?: string,
): Leaflet {
  const { person, practice, visit } = input;
  return buildLeaflet({
    plan,
    person: { name: person.name, ageYears },
    practice: { name: practice.name, invented: practice.invented, jurisdiction: practice.settings.jurisdiction },
    onDate: visit.onDate,
    language,
    home,
    agreed: visit.agreed,
    stopUsing: visit.stopUsing,
    uses: leafletUses({ plan, ageYears }, input, content, language),
    strip: leafletStrip(input, facts, content, language),
    nextOn: visit.nextOn,
    correctedOn: visit.correctedOn,
    shelf: practice.shelf,
    texts: content.leaflet,
    mouth,
    facts,
    mayBePregnant: isAskedAtAge('pregnant', ageYears, content.questions),
    needs,
    released: listReleased(visit),
  });
}
