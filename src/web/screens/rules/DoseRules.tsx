import { packLimits } from '../../../content/fluorideLimits.ts';
import { listSettable, settleTables } from '../../../core/regimen/disagreement/settleTables.ts';
import type { FluorideLimit } from '../../../core/regimen/tables.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { content, protocolName } from '../../content.ts';
import { formatMonths } from '../../format.ts';
import { sayBothSides } from './disagreements.ts';
import { RuleTable } from './RuleTable.tsx';

const KINDS = {
  'upper-intake-level': 'upper intake level',
  'safe-level': 'safe level',
  'label-cap': 'label cap',
  'intake-target': 'intake target',
} as const;

/** Limits as they hold in this practice. */
export function FluorideRules({ settings }: { readonly settings: PracticeSettings }) {
  const { fluoride, pasteAmounts, varnishAmounts } = settleTables(content.regimen, settings.disagreements);
  const choice = listSettable(content.regimen).find(({ id }) => id === 'fluoride-upper-level');
  return (
    <section id="fluoride" aria-label="Fluoride">
      <h2>Fluoride</h2>
      <p>
        Limits by name and kind. More swallowed than one brushing or rinse: poison centre now. From {fluoride.emergencyMgPerKg} mg per kg of
        body weight: emergency care now.
      </p>
      <details>
        <summary>
          Limits <span className="aside">{fluoride.limits.length} lines</span>
        </summary>
        {choice && <p>{sayBothSides(choice, settings)}</p>}
        <RuleTable
          label="Fluoride limits"
          heads={['Limit', 'Kind', 'Age', 'Value', 'In a plan']}
          rows={fluoride.limits.map((l) => ({
            id: `${l.name} ${l.fromAgeMonths} ${l.unit}`,
            cells: [
              l.name,
              KINDS[l.kind],
              sayMonths(l.fromAgeMonths, l.belowAgeMonths),
              `${l.value} ${l.unit === 'mg/day' ? 'mg a day' : 'mg/kg a day'}`,
              sayInPlan(l),
            ],
            source: l.source,
          }))}
        />
      </details>
      <details>
        <summary>
          Fluoride in one pack <span className="aside">{packLimits.length} lines</span>
        </summary>
        <RuleTable
          label="Fluoride in one pack"
          heads={['Pack', 'At most']}
          rows={packLimits.map(({ id, name, mgF, source }) => ({ id, cells: [name, `${mgF} mg fluoride`], source }))}
        />
      </details>
      <details>
        <summary>
          Amount of paste and varnish by age <span className="aside">{pasteAmounts.length + varnishAmounts.length} lines</span>
        </summary>
        <RuleTable
          label="Amount of paste and varnish by age"
          heads={['What', 'Age', 'Amount', 'Note']}
          rows={[
            ...pasteAmounts.map((p) => ({
              id: `paste ${p.fromAgeYears}`,
              cells: ['Paste', sayYears(p.fromAgeYears, p.belowAgeYears), `${p.amount}, ${p.amountG} g`, p.note],
              source: p.source,
            })),
            ...varnishAmounts.map((v) => ({
              id: `varnish ${v.fromAgeYears}`,
              cells: ['Varnish', sayYears(v.fromAgeYears, v.belowAgeYears), `${v.amountMl} mL a visit`, v.note],
              source: v.source,
            })),
          ]}
        />
      </details>
    </section>
  );
}

export function IntervalRules() {
  const { recall, oldBitewings } = content.regimen;
  return (
    <section id="intervals" aria-label="Intervals">
      <h2>Intervals</h2>
      <p>
        Time to the next visit comes from these tables. Time between bitewings is the practice's own setting; the table of 2012 is
        superseded and only shown for comparison.
      </p>
      <details>
        <summary>
          Next visit <span className="aside">{recall.length} lines</span>
        </summary>
        <RuleTable
          label="Time to the next visit"
          heads={['Table', 'Level', 'Age', 'Next visit']}
          rows={recall.map((r, i) => ({
            id: `${i}`,
            cells: [
              `${r.table}${r.protocols.length > 0 ? ` (${r.protocols.map(protocolName).join(', ')})` : ''}`,
              r.level ?? 'any',
              sayYears(r.fromAgeYears, r.belowAgeYears),
              formatMonths(r.fromMonths, r.toMonths),
            ],
            source: r.source,
          }))}
        />
      </details>
      <details>
        <summary>
          Bitewings, superseded table <span className="aside">{oldBitewings.length} lines</span>
        </summary>
        <RuleTable
          label="Bitewings, superseded table"
          heads={['Table', 'Age', 'Risk', 'Bitewings']}
          rows={oldBitewings.map((r, i) => ({
            id: `${i}`,
            cells: [
              r.label,
              sayYears(r.fromAgeYears, r.belowAgeYears),
              r.raised ? 'raised' : 'not raised',
              formatMonths(r.fromMonths, r.toMonths),
            ],
            source: r.source,
          }))}
        />
      </details>
    </section>
  );
}

/** An upper level keeps out what goes above it, unless the practice goes by another one. */
function sayInPlan({ kind, shownOnly }: FluorideLimit): string {
  if (kind !== 'upper-intake-level' && kind !== 'safe-level') return 'shown beside the sum';
  return shownOnly ? 'shown, keeps nothing out' : 'keeps out what goes above';
}

const OLDEST_YEARS = 120;

const sayYears = (from: number, below: number) =>
  below >= OLDEST_YEARS || !Number.isFinite(below) ? `${from} and over` : `${from} to under ${below}`;

function sayMonths(from: number, below: number): string {
  return below <= 24 ? `${from} to under ${below} months` : sayYears(Math.floor(from / 12), below / 12);
}
