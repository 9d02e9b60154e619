import { describe, expect, it } from 'vitest';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { regimenTables as tables } from '../../../content/regimenTables.ts';
import { proposePlan } from '../proposePlan.ts';
import type { DroppedCare, Need, NeedKind, PersonFacts, Plan, ShelfItem } from '../types.ts';

const facts: PersonFacts = {
  ...{ ageYears: 45, ageMonths: 540, weightKg: 70, pregnant: false, breastfeeding: false, canSpit: true },
  ...{ allergies: [], medicines: [], conditions: [], dogAtHome: false, youngChildAtHome: false },
  ...{ dryMouth: false, dentures: false, braces: false, jawPain: false },
};

/** What a list of care would name, so that nothing stronger is taken. */
const NAMED: Readonly<Partial<Record<NeedKind, Need['agentIds']>>> = {
  'fluoride-base': [['F_PASTE_STD', 'FTCP']],
  'fluoride-extra': [['F_RINSE_005', 'F_GEL_SNF2']],
};

interface Case {
  readonly needs: readonly NeedKind[];
  readonly dropped?: readonly DroppedCare[];
  readonly allergies?: readonly string[];
  readonly shelf?: readonly ShelfItem[];
}
function planFor({ needs, dropped = [], allergies = [], shelf = demoShelf }: Case): Plan {
  const asked = needs.map((kind): Need => ({ kind, state: 'needed', because: 'asked', agentIds: NAMED[kind], sources: [] }));
  const settings = { jurisdiction: 'US' } as const;
  return proposePlan({ facts: { ...facts, allergies }, needs: asked, shelf, signed: [], history: dropped, settings, tables });
}
const idsOf = (plan: Plan) => plan.lines.map((line) => line.shelfItemId);
const swapOf = ({ swaps = [] }: Plan, insteadOf: string, because: string) =>
  swaps.filter((s) => s.insteadOf === insteadOf && s.because === because).map(({ shelfItemId, says }) => [shelfItemId, says]);

describe('a complaint about stain', () => {
  it('of chlorhexidine offers an antimicrobial that anyone may give and that does not stain', () => {
    const plan = planFor({ needs: ['antimicrobial'], dropped: [{ shelfItemId: 'rinse-chlorhexidine-plain', why: 'stain' }] });
    expect(swapOf(plan, 'rinse-chlorhexidine-plain', 'stain')).toEqual([['rinse-essential-oils', 'does not stain']]);
  });

  it('of chlorhexidine offers nothing in its place where no antimicrobial is needed', () => {
    const plan = planFor({ needs: ['fluoride-base'], dropped: [{ shelfItemId: 'rinse-chlorhexidine-plain', why: 'stain' }] });
    expect(swapOf(plan, 'rinse-chlorhexidine-plain', 'stain')).toEqual([]);
  });

  it('of a stannous gel offers a rinse, whether it was used before or stands in the plan', () => {
    const cheapGel = demoShelf.map((i) => (i.id === 'gel-snf2' ? { ...i, priceCents: 1 } : i));
    const pinned = planFor({ needs: ['fluoride-extra'], shelf: cheapGel });
    expect([idsOf(pinned), swapOf(pinned, 'gel-snf2', 'stain')]).toEqual([['gel-snf2'], [['rinse-naf-005', 'does not stain']]]);
    const before = planFor({ needs: ['fluoride-extra'], dropped: [{ shelfItemId: 'gel-snf2', why: 'stain' }] });
    expect([idsOf(before), swapOf(before, 'gel-snf2', 'stain')]).toEqual([['rinse-naf-005'], [['rinse-naf-005', 'does not stain']]]);
  });
});

describe('a complaint about taste', () => {
  it('offers another flavour of the same thing first, by its name', () => {
    const plan = planFor({ needs: ['fluoride-base'] });
    expect(idsOf(plan)).toEqual(['paste-naf-1450']);
    expect(swapOf(plan, 'paste-naf-1450', 'taste')).toEqual([['paste-naf-1450-fruit', 'another taste, fruit']]);
    const strong = demoShelf.map((i) => (i.id === 'paste-naf-1450-fruit' ? { ...i, agentId: 'FTCP' } : i));
    const shelf = strong.map((i) => (i.id === 'paste-mfp-1450' ? { ...i, inStock: true } : i));
    expect(swapOf(planFor({ needs: ['fluoride-base'], shelf }), 'paste-naf-1450', 'taste')).toEqual([
      ['paste-mfp-1450', 'without flavour'],
    ]);
  });

  it('puts every paste of the flavour behind the others, and leaves gels alone', () => {
    const dropped = [{ shelfItemId: 'paste-naf-2800', why: 'taste' }];
    expect(idsOf(planFor({ needs: ['fluoride-base'], dropped }))).toEqual(['paste-naf-1450-fruit']);
    expect(idsOf(planFor({ needs: ['fluoride-base'], dropped: [{ shelfItemId: 'paste-naf-2800', why: 'price' }] }))).toEqual([
      'paste-naf-1450',
    ]);
    const gel = demoShelf.map((i) => (i.id === 'gel-snf2' ? { ...i, flavour: ' Mint' } : i));
    expect(idsOf(planFor({ needs: ['fluoride-extra'], dropped, shelf: gel }))).toEqual(['gel-snf2']);
  });
});

it('an allergy to mint or another flavour keeps out every pack with a flavour noted, ticked as an ingredient or not', () => {
  const shelf = demoShelf.map((i) => ({ ...i, traits: i.traits?.filter((t) => t !== 'flavour') }));
  const needs = ['fluoride-base', 'fluoride-extra', 'sweetener'] as const;
  const plan = planFor({ needs, allergies: ['peppermint'], shelf });
  expect(plan.lines.map((line) => shelf.find(({ id }) => id === line.shelfItemId)?.flavour)).toEqual(['none', 'none']);
  expect(plan.notOffered.filter(({ ruleId }) => ruleId === 'C34').map((x) => x.shelfItemId)).toContain('paste-naf-1450');
});
