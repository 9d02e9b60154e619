import { scaleLinear } from 'd3-scale';
import { memo } from 'react';
import type { AcidLine } from '../../core/plaque/day/acidLines.ts';
import { bandPath, curvePath, curvePieces } from '../../core/plaque/day/curvePath.ts';
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

/** One stroke over the whole day would be painted over the whole picture at every step of a drag. */
const PIECE_MINUTES = 120;

/** The pH of plaque through the day with its band, and the lines it is held against. Drawn again only when the curve is another one. */
export const AcidDayCurve = memo(function AcidDayCurve({ width, y: top, ph, band, before, lines }: AcidDayCurveProps) {
  const lowest = Math.min(PH.least, Math.floor(2 * Math.min(leastOf(ph), leastOf(band?.low ?? []))) / 2);
  const scale = { x: (minute: number) => xOf(minute, width), y: scaleOf(lowest, top) };
  return (
    <g>
      {band && <path className="ph-band" d={bandPath(band.low, band.high, scale)} />}
      <Lines width={width} top={top} lowest={lowest} lines={lines} />
      {before && <path className="ph-curve before" d={curvePath(before, scale)} />}
      <g className="ph-curve">
        {curvePieces(ph, scale, PIECE_MINUTES).map((piece, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a piece of the day is known by its place
          <path key={i} d={piece} />
        ))}
      </g>
      <Words width={width} top={top} lowest={lowest} lines={lines} />
    </g>
  );
});

interface GroundProps {
  readonly width: number;
  readonly top: number;
  /** pH at the lower end of the scale. */
  readonly lowest: number;
  readonly lines: readonly AcidLine[];
}

/** Every answer brings lines of its own, which nearly always are the same. */
const isSameGround = (a: GroundProps, b: GroundProps): boolean =>
  a.width === b.width &&
  a.top === b.top &&
  a.lowest === b.lowest &&
  a.lines.length === b.lines.length &&
  a.lines.every(({ id, ph, says }, i) => b.lines[i]?.id === id && b.lines[i].ph === ph && b.lines[i].says === says);

/** Under the curve: figures of the scale, and the lines. */
const Lines = memo(function Lines({ width, top, lowest, lines }: GroundProps) {
  const y = scaleOf(lowest, top);
  const ticks = y.ticks(4).filter(Number.isInteger);
  return (
    <>
      {ticks.map((tick) => (
        <text key={tick} className="tick-text" x={LEFT - 10} y={y(tick) + 4} textAnchor="end">
          {tick}
        </text>
      ))}
      <text className="tick-text" x={0} y={top + 4}>
        pH
      </text>
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
    </>
  );
}, isSameGround);

/** Over the curve: what the lines are, and the hours. */
const Words = memo(function Words({ width, top, lowest, lines }: GroundProps) {
  const y = scaleOf(lowest, top);
  const bottom = top + CURVE_HEIGHT;
  return (
    <>
      {placeWords(lines.filter(isDrawn), y).map(({ line, at }) => (
        <text key={line.id} className={line.id === 'ph-5.5' ? 'chart-halo' : 'chart-halo line-words'} x={LEFT + 4} y={at}>
          {wordsOf(line)}
        </text>
      ))}
      <line className="axis" x1={LEFT} x2={width - RIGHT} y1={bottom} y2={bottom} />
      {listHours(width).map((hour) => (
        <g key={hour} transform={`translate(${xOf(hour * 60, width)},${bottom})`}>
          <line className="tick" y2="6" />
          <text className="tick-text" y="22" textAnchor={hour === 24 ? 'end' : 'middle'} dx={hour === 24 ? RIGHT : 0}>
            {String(hour).padStart(2, '0')}:00
          </text>
        </g>
      ))}
    </>
  );
}, isSameGround);

const scaleOf = (lowest: number, top: number) => scaleLinear([lowest, PH.most], [top + CURVE_HEIGHT, top]);

function leastOf(values: ArrayLike<number>): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < values.length; i += 1) least = Math.min(least, values[i] ?? least);
  return least;
}

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
