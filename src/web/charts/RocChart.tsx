import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { LocalCutoffResult } from '../../core/meter/localCutoffStudy.ts';

const WIDTH = 340;
const HEIGHT = 306;
const PLOT = { left: 56, right: 320, top: 16, bottom: 280 };

/** Share of people with a new lesion whose reading is high, against the share without, as the limit of "high" goes down. */
export function RocChart({ result }: { readonly result: LocalCutoffResult }) {
  const x = scaleLinear().domain([0, 1]).range([PLOT.left, PLOT.right]);
  const y = scaleLinear().domain([0, 1]).range([PLOT.bottom, PLOT.top]);
  const curve = line<LocalCutoffResult['curve'][number]>()
    .x(({ specificity }) => x(1 - specificity))
    .y(({ sensitivity }) => y(sensitivity))(result.curve);
  const present = result.atPresentCutoff;
  const [px, py] = [x(1 - present.specificity.estimate), y(present.sensitivity.estimate)];
  return (
    <svg
      className="readings-chart roc-chart"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Curve over ${result.curve.length} limits; area ${Math.round(100 * result.auc.auc)} of 100.`}
    >
      {[0, 0.5, 1].map((share) => (
        <g key={share}>
          <line className="grid" x1={PLOT.left} x2={PLOT.right} y1={y(share)} y2={y(share)} />
          <text className="tick-text" x={PLOT.left - 8} y={y(share) + 4} textAnchor="end">
            {100 * share} %
          </text>
          <text className="tick-text" x={x(share)} y={PLOT.bottom + 20} textAnchor="middle">
            {100 * share} %
          </text>
        </g>
      ))}
      <line className="control-target" x1={x(0)} y1={y(0)} x2={x(1)} y2={y(1)} />
      <path className="roc-curve" d={curve ?? ''} />
      <circle className="roc-present" cx={px} cy={py} r="5" />
      <text className="strong" x={px + 12} y={py + 24}>
        present cut-off
      </text>
    </svg>
  );
}
