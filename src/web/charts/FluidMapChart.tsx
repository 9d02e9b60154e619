import { useId } from 'react';
import type { FluidMap } from '../../core/chemistry/fluidMap.ts';
import { sayWindow } from '../../core/chemistry/sayWindow.ts';
import { Axes, ChartFrame, type Plot } from './ChartFrame.tsx';
import { type MapDomain, type MapScales, mapMark, mapScales, mineralPath, windowPath } from './fluidMapLayout.ts';

const HEIGHT = 340;
/** Length of the stroke at the end of a spread. */
const CAP = 5;
const PRODUCT_TICKS = [0.001, 0.01, 0.1, 1, 10, 100, 1000];

interface FluidMapChartProps {
  readonly map: FluidMap;
  readonly domain: MapDomain;
  /** The pH that is quoted for everybody. */
  readonly commonPh: number;
}

/** pH against calcium times phosphate: two lines, the window between them hatched, this fluid with its spread, and the common 5.5. */
export function FluidMapChart({ map, domain, commonPh }: FluidMapChartProps) {
  const id = useId();
  return (
    <ChartFrame
      height={HEIGHT}
      label={`Saturation map of ${map.fluid.name}. ${sayWindow(map)} The table gives the lines.`}
      caption="Across: calcium times phosphate, (mmol/L)², log scale. Up: pH."
    >
      {(plot) => {
        const scales = mapScales(domain, plot);
        return (
          <>
            <defs>
              <pattern id={`${id}w`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <line className="hatch map-hatch" x1="0" y1="0" x2="0" y2="7" />
              </pattern>
            </defs>
            <Axes plot={plot} x={productTicks(scales)} y={phTicks(scales)} />
            <path className="map-window" d={windowPath(map.rows, scales)} fill={`url(#${id}w)`} />
            <path className="map-line" d={mineralPath(map.rows, 'hydroxyapatite', scales)} />
            <path className="map-line fluorapatite" d={mineralPath(map.rows, 'fluorapatite', scales)} />
            <path className="map-line enamel" d={mineralPath(map.rows, 'enamel', scales)} />
            <CommonPh at={scales.y(commonPh)} pH={commonPh} plot={plot} />
            <RegionWords plot={plot} />
            <Mark map={map} scales={scales} />
          </>
        );
      }}
    </ChartFrame>
  );
}

const productTicks = ({ x }: MapScales) => {
  const [low = 1, high = 1] = x.domain();
  return PRODUCT_TICKS.filter((product) => product >= low && product <= high).map((product) => ({ at: x(product), says: `${product}` }));
};

const phTicks = ({ y }: MapScales) =>
  y
    .ticks(6)
    .filter(Number.isInteger)
    .map((pH) => ({ at: y(pH), says: `${pH}` }));

function CommonPh({ at, pH, plot }: { readonly at: number; readonly pH: number; readonly plot: Plot }) {
  return (
    <g>
      <line className="map-common" x1={plot.left} x2={plot.right} y1={at} y2={at} />
      <text className="chart-halo" x={plot.right} y={at - 5} textAnchor="end">
        {pH}, common practice
      </text>
    </g>
  );
}

function RegionWords({ plot: { left, right, top, bottom } }: { readonly plot: Plot }) {
  return (
    <>
      <text className="chart-halo map-region" x={right - 6} y={top + 14} textAnchor="end">
        neither dissolves
      </text>
      <text className="chart-halo map-region" x={left + 8} y={bottom - 10}>
        both dissolve
      </text>
    </>
  );
}

function Mark({ map, scales }: { readonly map: FluidMap; readonly scales: MapScales }) {
  const mark = mapMark(map, scales);
  if (!mark) return null;
  const { x, y, across, upright } = mark;
  const isTypical = map.critical.basis !== 'measured';
  return (
    <g>
      {across && <path className="map-spread" d={`M${across[0]},${y - CAP}v${2 * CAP}m0,${-CAP}H${across[1]}m0,${-CAP}v${2 * CAP}`} />}
      {upright && <path className="map-spread" d={`M${x - CAP},${upright[0]}h${2 * CAP}m${-CAP},0V${upright[1]}m${-CAP},0h${2 * CAP}`} />}
      <circle className={isTypical ? 'mark hollow' : 'mark'} cx={x} cy={y} r="5.5" />
      <text className="strong chart-halo" x={x} y={(upright?.[0] ?? y - 6) - 7} textAnchor="middle">
        {map.critical.pH?.toFixed(1)} {WORDS[map.critical.basis]}
      </text>
    </g>
  );
}

const WORDS = { typical: 'typical', partly: 'measured in part', measured: 'measured' } as const;
