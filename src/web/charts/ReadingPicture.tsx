import { scaleLog } from 'd3-scale';
import { area } from 'd3-shape';
import { useId } from 'react';
import type { Bound, Meter } from '../../core/reading/types.ts';
import { formatNumber } from '../format.ts';

export interface ReadingPictureProps {
  readonly meter: Pick<Meter, 'name' | 'cutoffRlu' | 'lowestRlu' | 'highestRlu'>;
  readonly rlu: number;
  readonly bound: Bound;
  /** Standard deviation of ln(reading) of one swab, from the meter's coefficient of variation. */
  readonly sdLog: number;
  readonly counted: boolean;
}

const WIDTH = 440;
const HEIGHT = 122;
const BASE = 80;
const TOP = 24;
const EDGE = 14;
const REACH_SD = 4;
/** Room for the name of the cut-off beside its line. */
const NAME_WIDTH = 170;

/** The reading as a distribution against the meter's cut-off on a log axis, the part beyond it hatched; hollow when it is not counted. */
export function ReadingPicture(props: ReadingPictureProps) {
  const { meter, rlu, bound, sdLog, counted } = props;
  const id = useId();
  const x = scaleLog()
    .domain(axisOf(props))
    .range([EDGE, WIDTH - EDGE])
    .clamp(true);
  const ticks = ticksOf(x.domain() as [number, number]);
  const cut = x(meter.cutoffRlu);
  const nameLeft = cut > NAME_WIDTH && (rlu >= meter.cutoffRlu || cut > WIDTH - NAME_WIDTH);
  return (
    <svg className="reading-picture" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={describe(props)}>
      <defs>
        <pattern id={`${id}h`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="hatch" x1="0" y1="0" x2="0" y2="6" />
        </pattern>
        <clipPath id={`${id}b`}>
          <rect x={cut} y="0" width={WIDTH} height={HEIGHT} />
        </clipPath>
      </defs>
      {bound === 'exact' ? (
        <Bell x={x} rlu={rlu} sdLog={sdLog} counted={counted} id={id} />
      ) : (
        <path
          className="bound"
          d={
            bound === 'at-most' ? `M${x(rlu)},${BASE - 14}H${EDGE}m8,-5l-8,5l8,5` : `M${x(rlu)},${BASE - 14}H${WIDTH - EDGE}m-8,-5l8,5l-8,5`
          }
        />
      )}
      <circle className={counted ? 'mark' : 'mark hollow'} cx={x(rlu)} cy={BASE} r="4" />
      <line className="axis" x1={EDGE} x2={WIDTH - EDGE} y1={BASE} y2={BASE} />
      <line className="cutoff" x1={cut} x2={cut} y1={TOP - 14} y2={BASE + 5} />
      <text className="strong" x={cut + (nameLeft ? -8 : 8)} y={TOP - 6} textAnchor={nameLeft ? 'end' : 'start'}>
        this meter's cut-off {formatNumber(meter.cutoffRlu)}
      </text>
      {ticks.map((tick) => (
        <g key={tick} transform={`translate(${x(tick)},${BASE})`}>
          <line className="tick" y2="5" />
          <text className="tick-text" y="20" textAnchor="middle">
            {formatNumber(tick)}
          </text>
        </g>
      ))}
      <text className="tick-text" x={WIDTH - EDGE} y={HEIGHT - 5} textAnchor="end">
        RLU, log scale
      </text>
    </svg>
  );
}

interface BellProps extends Pick<ReadingPictureProps, 'rlu' | 'sdLog' | 'counted'> {
  readonly x: (rlu: number) => number;
  readonly id: string;
}

function Bell({ x, rlu, sdLog, counted, id }: BellProps) {
  const steps = Array.from({ length: 97 }, (_, i) => -REACH_SD + (i * 2 * REACH_SD) / 96);
  const shape =
    area<number>()
      .x((z) => x(rlu * Math.exp(z * sdLog)))
      .y0(BASE)
      .y1((z) => BASE - (BASE - TOP) * Math.exp(-(z ** 2) / 2))(steps) ?? '';
  if (!counted) return <path className="bell hollow" d={shape} />;
  return (
    <>
      <path className="bell" d={shape} />
      <path className="beyond" d={shape} fill={`url(#${id}h)`} clipPath={`url(#${id}b)`} />
      <path className="bell-line" d={shape} />
    </>
  );
}

/** Wide enough for the cut-off and the whole distribution, in round numbers. */
function axisOf({ meter, rlu, sdLog }: ReadingPictureProps): [number, number] {
  const safeRlu = Math.max(rlu, meter.lowestRlu / 10, 1);
  const low = Math.min(meter.cutoffRlu / 8, safeRlu * Math.exp(-REACH_SD * sdLog));
  const high = Math.max(meter.cutoffRlu * 8, safeRlu * Math.exp(REACH_SD * sdLog));
  return [Math.max(low, meter.lowestRlu / 2, 1), Math.min(high, meter.highestRlu * 2)];
}

const STEPS = [1, 2, 5] as const;
const MOST_TICKS = 8;

/** 1, 2, 5 times powers of ten; only powers of ten where that would be too many. */
export function ticksOf([low, high]: readonly [number, number]): readonly number[] {
  const powers = Array.from({ length: 10 }, (_, p) => 10 ** p);
  const within = (values: readonly number[]) => values.filter((v) => v >= low && v <= high);
  const fine = within(powers.flatMap((p) => STEPS.map((s) => s * p)));
  return fine.length <= MOST_TICKS ? fine : within(powers);
}

function describe({ meter, rlu, bound, counted }: ReadingPictureProps): string {
  const limit = bound === 'at-most' ? ' or less' : bound === 'at-least' ? ' or more' : ' with its swab noise';
  const place = `Reading of ${formatNumber(rlu)} RLU${limit} against the cut-off of ${meter.name}, ${formatNumber(meter.cutoffRlu)} RLU, on a log scale.`;
  return counted ? place : `${place} Not counted, so drawn hollow.`;
}
