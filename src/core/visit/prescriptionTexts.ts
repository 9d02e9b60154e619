import { cautionMessage } from '../leaflet/cautionMessage.ts';
import { catalogOf } from '../leaflet/leafletTable.ts';
import { listLeafletCautions } from '../leaflet/listLeafletCautions.ts';
import { listPrintableLines, type PrintableLine } from '../leaflet/listPrintableLines.ts';
import { itemPpm } from '../regimen/itemTraits.ts';
import { sayDirections } from '../regimen/sayDirections.ts';
import { packsCovered } from '../regimen/signatureCover.ts';
import type { ShelfItem, SignedBy } from '../regimen/types.ts';
import { isAskedAtAge } from './personFacts.ts';
import type { VisitAssessment, VisitInput } from './types.ts';
import type { VisitContent } from './visitContent.ts';

/** What a signed prescription item has to say, to be copied onto the form that local law asks for. Itself no prescription. */
export interface PrescriptionText {
  readonly shelfItemId: string;
  /** By ingredient and strength, never by a maker. */
  readonly item: string;
  readonly form: string;
  /** "1.1 % sodium fluoride"; null = the shelf does not tell. */
  readonly strength: string | null;
  /** Packs that the signature covers in all; null = the shelf does not tell. */
  readonly quantity: string | null;
  readonly directions: string;
  readonly duration: string;
  /** In the words of the leaflet, so that nothing private stands here. */
  readonly cautions: readonly string[];
  readonly signedBy: SignedBy;
}

/**
 * The texts of a visit: every item of prescription strength for use at home that is signed and was not turned down. What waits, what was
 * refused and what is done at the visit is not among them.
 * @param assessment  of the same input; the leaflet's rule of what is released holds here too
 */
export function prescriptionTexts(
  assessment: Pick<VisitAssessment, 'plan' | 'ageYears' | 'facts'>,
  { practice, visit }: VisitInput,
  { leaflet, questions, regimen }: Pick<VisitContent, 'leaflet' | 'questions' | 'regimen'>,
): readonly PrescriptionText[] {
  const { plan, ageYears, facts } = assessment;
  const english = catalogOf(leaflet, 'en');
  const reader = { spits: facts.canSpit !== false, mayBePregnant: isAskedAtAge('pregnant', ageYears, questions) };
  const cautionsOf = (line: PrintableLine) =>
    listLeafletCautions([], [line], ageYears, leaflet.cautions).flatMap((id) => english[cautionMessage(id, english, reader)] ?? []);
  return listPrintableLines(plan.lines, practice.shelf, visit.agreed?.items).flatMap((printable): PrescriptionText[] => {
    const { line, item } = printable;
    if (line.state !== 'signed' || !line.signedBy || line.use.atVisit === true) return [];
    const agent = regimen.agents.find((a) => a.id === item.agentId);
    if (item.release !== 'prescription' && agent?.release !== 'prescription') return [];
    return [
      {
        shelfItemId: item.id,
        item: line.name,
        form: item.form,
        strength: strengthOf(item),
        quantity: item.packAmount ? sayQuantity(packsCovered(line.signedBy), item.packAmount) : null,
        directions: sayDirections(line),
        duration:
          line.use.courseDays === undefined
            ? 'no end date set; looked at again at the next visit'
            : `${line.use.courseDays} days, then stop`,
        cautions: cautionsOf(printable),
        signedBy: line.signedBy,
      },
    ];
  });
}

const sayQuantity = (packs: number, { value, unit }: NonNullable<ShelfItem['packAmount']>): string =>
  packs === 1 ? `1 pack of ${value} ${unit}` : `${packs} packs of ${value} ${unit} in all, from this visit on`;

/** By share of the compound; by fluoride where the shelf has no share. */
function strengthOf(item: ShelfItem): string | null {
  const { percent, compound } = item;
  if (percent !== undefined) return `${percent} %${compound ? ` ${COMPOUNDS[compound]}` : ''}`;
  const ppm = itemPpm(item);
  return ppm === undefined ? null : `${Math.round(ppm).toLocaleString('en')} ppm fluoride`;
}

const COMPOUNDS: Readonly<Record<NonNullable<ShelfItem['compound']>, string>> = {
  NaF: 'sodium fluoride',
  SnF2: 'stannous fluoride',
  Na2PO3F: 'sodium monofluorophosphate',
  'AgF(NH3)2': 'silver diammine fluoride',
};
