import { scaleLinear } from 'd3-scale';
import { memo } from 'react';
import type { AcidLine } from '../../core/plaque/day/acidLines.ts';
import { bandPath, curvePath } from '../../core/plaque/day/curvePath.ts';
import { LEFT, listHours, RIGHT, xOf } from './acidDayLayout.ts';

export const CURVE_HEIGHT = 250;
const AXIS_HEIGHT = 30;
const PH = { least: 4, most: 7.5 } as const;

export interface PhBand {
  readonly low: ArrayLike<number>;
  readonly high: ArrayLike<number>;
}

interface AcidDayCurveProps {
  readonly width: number;
  readonly y: number;
  readonly ph: ArrayLike<number>;
  readonly band: PhBand | null;
  /** The day as it was told, beside a changed one. */
  readonly before: ArrayLike<number> | null;
  readonly lines: readonly AcidLine[];
}

/** The pH of plaque through the day with its band, and the lines it is held against. Drawn again only when the curve is another one. */
export const AcidDayCurve = memo(function AcidDayCurve({ width, y: top, ph, band, before, lines }: AcidDayCurveProps) {
  const lowest = Math.min(PH.least, Math.floor(2 * Math.min(...Array.from(ph), ...Array.from(band?.low ?? []))) / 2);
  const y = scaleLinear([lowest, PH.most], [top + CURVE_HEIGHT, top]);
  const x = (minute: number) => xOf(minute, width);
  const bottom = top + CURVE_HEIGHT;
  const ticks = y.ticks(4).filter(Number.isInteger);
  return (
    <g>
      {ticks.map((tick) => (
        <text key={tick} className="tick-text" x={LEFT - 10} y={y(tick) + 4} textAnchor="end">
          {tick}
        </text>
      ))}
      <text className="tick-text" x={0} y={top + 4}>
        pH
      </text>
      {band && <path className="ph-band" d={bandPath(band.low, band.high, { x, y })} />}
      {lines.filter(isDrawn).map((line) => (
        <line
          key={line.id}
          className={`ph-line ${line.id.replace('.', '-')}`}
          x1={LEFT}
          x2={width - RIGHT}
          y1={y(line.ph)}
          y2={y(line.ph)}
        />
      ))}
      {before && <path className="ph-curve before" d={curvePath(before, { x, y })} />}
      <path className="ph-curve" d={curvePath(ph, { x, y })} />
      {placeWords(lines.filter(isDrawn), y).map(({ line, at }) => (
        <text key={line.id} className={line.id === 'ph-5.5' ? 'chart-halo' : 'chart-halo line-words'} x={LEFT + 4} y={at}>
          {wordsOf(line)}
        </text>
      ))}
      <line className="axis" x1={LEFT} x2={width - RIGHT} y1={bottom} y2={bottom} />
      {listHours(width).map((hour) => (
        <g key={hour} transform={`translate(${x(hour * 60)},${bottom})`}>
          <line className="tick" y2="6" />
          <text className="tick-text" y="22" textAnchor={hour === 24 ? 'end' : 'middle'} dx={hour === 24 ? RIGHT : 0}>
            {String(hour).padStart(2, '0')}:00
          </text>
        </g>
      ))}
    </g>
  );
});

export const CURVE_BLOCK_HEIGHT = CURVE_HEIGHT + AXIS_HEIGHT;

/** The two critical lines, and the popular one, fainter. */
const isDrawn = ({ id }: AcidLine): boolean => id === 'saliva' || id === 'plaque-fluid' || id === 'ph-5.5';

/** "5.3 typical saliva (not measured)" from "5.3 for typical saliva (not measured)": the figure stands at its line. */
const wordsOf = ({ says }: AcidLine): string => says.replace(' for ', ' ');

const LINE_OF_TEXT = 15;

/** Words over their line; where two lines lie close, the lower ones give way downwards. */
function placeWords(lines: readonly AcidLine[], y: (ph: number) => number): readonly { readonly line: AcidLine; readonly at: number }[] {
  let last = Number.NEGATIVE_INFINITY;
  return [...lines]
    .sort((a, b) => b.ph - a.ph)
    .map((line) => {
      last = Math.max(y(line.ph) - 4, last + LINE_OF_TEXT);
      return { line, at: last };
    });
}
