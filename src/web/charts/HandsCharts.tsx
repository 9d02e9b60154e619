import { scaleLinear, scaleUtc } from 'd3-scale';
import { line } from 'd3-shape';
import { funnelAt, type HandsLine, type HandsPoint, type HandsSpread } from '../../core/checks/compareHands.ts';
import { plural } from '../format.ts';
import { Axes, ChartFrame, type Plot, timeTicks } from './ChartFrame.tsx';
import { ratioScale, ratioTicks } from './ratioAxis.ts';

const HEIGHT = 250;
const DAY_MS = 86_400_000;
const STEPS = 80;
/** With one control the funnel is so wide that nothing else could be seen. */
const FIRST = 3;

interface FunnelChartProps extends HandsSpread {
  readonly lines: readonly HandsLine[];
}

/** Each member's mean against how many controls it comes from, between the lines of what chance alone brings. */
export function FunnelChart({ lines, ...spread }: FunnelChartProps) {
  const most = Math.min(Math.max(...lines.map(({ controls }) => controls)) * 1.3 + 1, spread.all);
  const first = Math.min(FIRST, ...lines.map(({ controls }) => controls));
  const counts = Array.from({ length: STEPS + 1 }, (_, i) => first * (most / first) ** (i / STEPS));
  const funnel = counts.map((count) => ({ count, ...funnelAt(count, spread) }));
  const ratios = [...lines.map(({ ratio }) => ratio), funnel[0]?.high ?? 1];
  return (
    <ChartFrame
      height={HEIGHT}
      label={`Mean of ${plural(lines.length, 'member')} against the number of their controls. The table gives each.`}
      caption="Across: number of controls. Up: a member's controls against those of all. The fewer the controls, the wider the lines, and between them is what chance alone brings. Hollow: too few to compare."
    >
      {(plot) => {
        const x = scaleLinear().domain([0, most]).range([plot.left, plot.right]);
        const y = ratioScale(ratios, plot);
        const edge = (of: 'low' | 'high') =>
          line<(typeof funnel)[number]>()
            .x(({ count }) => x(count))
            .y((at) => y(at[of]))(funnel) ?? '';
        return (
          <>
            <Axes plot={plot} x={x.ticks(6).map((count) => ({ at: x(count), says: String(count) }))} y={ratioTicks(y)} />
            <path className="control-target" d={`M${plot.left},${y(1)}H${plot.right}`} />
            <path className="hands-limit" d={edge('high')} />
            <path className="hands-limit" d={edge('low')} />
            {placeNames(lines.map((member) => ({ member, x: x(member.controls), y: y(member.ratio) }))).map(({ member, nameY, ...at }) => (
              <Named key={member.operator} member={member} {...at} nameY={nameY} plot={plot} />
            ))}
          </>
        );
      }}
    </ChartFrame>
  );
}

interface Place {
  readonly member: HandsLine;
  readonly x: number;
  readonly y: number;
}

const NAME_HEIGHT = 17;

/** Names one below the other, each at its mark or as near below it as the name above lets it. */
function placeNames(places: readonly Place[]): readonly (Place & { readonly nameY: number })[] {
  let least = 0;
  return [...places]
    .sort((a, b) => a.y - b.y)
    .map((place) => {
      const nameY = Math.max(place.y - 8, least);
      least = nameY + NAME_HEIGHT;
      return { ...place, nameY };
    });
}

/** Room that a name takes to the right of its mark. */
const NAME_WIDTH = 120;

function Named({ member, x, y, nameY, plot }: Place & { readonly nameY: number; readonly plot: Plot }) {
  const side = x > plot.right - NAME_WIDTH ? -1 : 1;
  return (
    <g>
      <line className="hands-leader" x1={x} y1={y} x2={x + 12 * side} y2={nameY} />
      <circle className={member.state === 'too-few' ? 'mark hollow' : 'mark'} cx={x} cy={y} r="5" />
      <text className="strong" x={x + 15 * side} y={nameY + 4} textAnchor={side < 0 ? 'end' : 'start'}>
        {member.operator}
      </text>
    </g>
  );
}

type Averaged = HandsPoint & { readonly moving: NonNullable<HandsPoint['moving']> };

/** One member's controls over time with their moving average, between limits that are narrow while it rests on few. */
export function MovingChart({ operator, points }: Pick<HandsLine, 'operator' | 'points'>) {
  const times = points.map(({ takenAt }) => Date.parse(takenAt));
  const averaged = points.filter((point): point is Averaged => point.moving !== undefined);
  const ratios = averaged.flatMap(({ ratio, moving }) => [ratio, moving.high]);
  return (
    <ChartFrame
      height={HEIGHT}
      label={`${plural(points.length, 'control')} of ${operator} over time with their moving average and its limits, ${points.length - averaged.length} not counted. The table gives each.`}
      caption="Up: each control against those of all. Line: average in which the newest counts one fifth. Dashes: between them is what chance alone brings; they widen at first, as the average can move further. Hollow: not counted; at the edge where it lies beyond."
    >
      {(plot) => {
        const x = scaleUtc()
          .domain([Math.min(...times) - 7 * DAY_MS, Math.max(...times) + 7 * DAY_MS])
          .range([plot.left, plot.right]);
        const y = ratioScale(ratios, plot);
        const pathOf = (of: 'ratio' | 'low' | 'high') =>
          line<Averaged>()
            .x(({ takenAt }) => x(Date.parse(takenAt)))
            .y(({ moving }) => y(moving[of]))(averaged) ?? '';
        return (
          <>
            <Axes plot={plot} x={timeTicks(x, plot)} y={ratioTicks(y)} />
            <path className="control-target" d={`M${plot.left},${y(1)}H${plot.right}`} />
            {points.map(({ id, takenAt, ratio, moving }) => (
              <circle
                key={id}
                className={moving ? 'mark' : 'mark hollow'}
                cx={x(Date.parse(takenAt))}
                cy={Math.min(Math.max(y(ratio), plot.top), plot.bottom)}
                r={moving ? 2.5 : 3.5}
              />
            ))}
            <path className="hands-limit" d={pathOf('high')} />
            <path className="hands-limit" d={pathOf('low')} />
            <path className="hands-average" d={pathOf('ratio')} />
          </>
        );
      }}
    </ChartFrame>
  );
}
