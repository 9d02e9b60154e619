import { scaleLog, scaleUtc } from 'd3-scale';
import type { StoredReading } from '../../api/bundles.ts';
import { personSeries, type SeriesTrend } from '../../core/reading/personSeries.ts';
import { content } from '../content.ts';
import { formatDate, formatNumber } from '../format.ts';
import { Axes, ChartFrame, logTicks, type Plot, timeTicks } from './ChartFrame.tsx';
import { noiseBand } from './noiseBand.ts';
import { isCounted, meterOf, sayRlu } from './storedReading.ts';

const HEIGHT = 250;
const DAY_MS = 86_400_000;
const BAR = 10;

type Drawn = StoredReading & { readonly rlu: number };

const bandOf = (reading: Drawn) => noiseBand(reading.rlu, meterOf(reading), content.readingNoise);

/** Readings with the band of their noise, hollow where they do not count, against the cut-off of the meter that gave them. */
export function ReadingsChart({ readings }: { readonly readings: readonly StoredReading[] }) {
  const drawn = readings.filter((r): r is Drawn => r.rlu !== null && r.rlu > 0);
  const [first] = drawn;
  if (!first) return null;
  const times = drawn.map((r) => Date.parse(r.takenAt));
  const trend = trendOf(drawn);
  const values = [...drawn.flatMap((r) => [...bandOf(r), r.cutoffRlu]), ...trend.flatMap((p) => [p.lowRlu, p.highRlu])];
  const counted = drawn.filter(isCounted).length;
  return (
    <figure>
      <ChartFrame
        height={HEIGHT}
        label={`${drawn.length} readings over time on a log scale, ${counted} of them counted. The table gives each.`}
        caption={`RLU, log scale. Bars: where swab noise and day-to-day change alone would put it, 95 times in 100.${trend.length > 0 ? ' Line: trend; dashes: its band.' : ''}`}
      >
        {(plot) => {
          const x = scaleUtc()
            .domain([Math.min(...times) - 30 * DAY_MS, Math.max(...times) + 30 * DAY_MS])
            .range([plot.left, plot.right]);
          const y = scaleLog()
            .domain([Math.min(...values) / 1.3, Math.max(...values) * 1.3])
            .range([plot.bottom, plot.top]);
          return (
            <>
              <Axes plot={plot} x={timeTicks(x, plot)} y={logTicks(y, formatNumber)} />
              {metersOf(drawn).map((reading) => (
                <CutoffLine key={reading.meterId} reading={reading} plot={plot} y={y} />
              ))}
              {trend.length > 0 && <TrendBand points={trend} x={x} y={y} />}
              {drawn.map((reading) => (
                <Mark key={reading.id} reading={reading} x={x(Date.parse(reading.takenAt))} y={y} />
              ))}
            </>
          );
        }}
      </ChartFrame>
      <details>
        <summary>Show as table</summary>
        <ReadingsTable readings={readings} />
      </details>
    </figure>
  );
}

interface CutoffLineProps {
  readonly reading: Drawn;
  readonly plot: Plot;
  readonly y: (rlu: number) => number;
}

function CutoffLine({ reading: { meterName, cutoffRlu }, plot, y }: CutoffLineProps) {
  const at = y(cutoffRlu);
  return (
    <g>
      <line className="cutoff" x1={plot.left} x2={plot.right} y1={at} y2={at} />
      <text className="strong chart-halo" x={plot.right} y={at - 6} textAnchor="end">
        cut-off of {meterName} {formatNumber(cutoffRlu)}
      </text>
    </g>
  );
}

function Mark({ reading, x, y }: { readonly reading: Drawn; readonly x: number; readonly y: (rlu: number) => number }) {
  const counts = isCounted(reading);
  const [low, high] = bandOf(reading);
  return (
    <g>
      {counts && <rect className="band" x={x - BAR / 2} width={BAR} y={y(high)} height={y(low) - y(high)} />}
      <circle className={counts ? 'mark' : 'mark hollow'} cx={x} cy={y(reading.rlu)} r="5" />
    </g>
  );
}

/** The line through what counts and its band, where three readings or more of one meter give one. */
function trendOf(readings: readonly Drawn[]): SeriesTrend['band'] {
  const [only, ...others] = metersOf(readings);
  if (!only || others.length > 0) return [];
  const trend = personSeries(readings, [meterOf(only)], content.readingNoise)[0]?.trend;
  return trend?.ok ? trend.value.band : [];
}

interface TrendBandProps {
  readonly points: SeriesTrend['band'];
  readonly x: (ms: number) => number;
  readonly y: (rlu: number) => number;
}

function TrendBand({ points, x, y }: TrendBandProps) {
  const pathOf = (rluOf: (point: SeriesTrend['band'][number]) => number) =>
    points.map((point) => `${x(point.atMs).toFixed(1)},${y(rluOf(point)).toFixed(1)}`).join(' ');
  return (
    <g>
      <polyline className="trend" points={pathOf((p) => p.rlu)} />
      <polyline className="trend edge" points={pathOf((p) => p.lowRlu)} />
      <polyline className="trend edge" points={pathOf((p) => p.highRlu)} />
    </g>
  );
}

function metersOf(readings: readonly Drawn[]): readonly Drawn[] {
  return [...new Map(readings.map((r) => [r.meterId, r])).values()];
}

function ReadingsTable({ readings }: { readonly readings: readonly StoredReading[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Taken</th>
          <th scope="col">RLU</th>
          <th scope="col">Meter, cut-off</th>
          <th scope="col">Counted</th>
        </tr>
      </thead>
      <tbody>
        {readings.map((r) => (
          <tr key={r.id}>
            <th scope="row">{formatDate(r.takenAt)}</th>
            <td>{sayRlu(r)}</td>
            <td>
              {r.meterName}, {formatNumber(r.cutoffRlu)}
            </td>
            <td>
              {isCounted(r)
                ? r.state === 'flagged'
                  ? `yes, with caution: ${r.reasons.join('; ')}`
                  : 'yes'
                : `not counted: ${r.reasons.join('; ') || r.state}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
