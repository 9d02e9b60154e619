import type { FluidMap, MapRow } from '../../../core/chemistry/fluidMap.ts';
import { sayWindow } from '../../../core/chemistry/sayWindow.ts';
import { FluidMapChart } from '../../charts/FluidMapChart.tsx';
import type { MapDomain } from '../../charts/fluidMapLayout.ts';
import { capitalise } from '../../format.ts';
import { sayAmount } from './sayAmount.ts';

interface FluidMapsProps {
  readonly maps: readonly FluidMap[];
  readonly domain: MapDomain;
  readonly commonPh: number;
}

/** One map for each fluid, on the same scales: its own lines, for they depend on its fluoride and its salts. */
export function FluidMaps({ maps, domain, commonPh }: FluidMapsProps) {
  return (
    <>
      <p>
        Full line: hydroxyapatite is just saturated. Long dashes: fluorapatite. Short dashes: enamel. Hatched: hydroxyapatite dissolves
        while fluorapatite forms. Mark: this fluid where enamel begins to dissolve, hollow where it is not measured; the cross shows how far
        people usually differ.
      </p>
      <div className="fluid-maps">
        {maps.map((map) => (
          <figure key={map.fluid.name}>
            <h3>{capitalise(map.fluid.name)}</h3>
            <p>{sayWindow(map)}</p>
            <FluidMapChart map={map} domain={domain} commonPh={commonPh} />
            <details>
              <summary>Show {map.fluid.name} as table</summary>
              <MapTable map={map} />
            </details>
          </figure>
        ))}
      </div>
    </>
  );
}

/** Every fifth line of the picture, and the fluid itself. */
const STEP = 5;

function MapTable({ map: { fluid, here, rows } }: { readonly map: FluidMap }) {
  const shown = rows.filter((_, i) => i % STEP === 0);
  return (
    <table aria-label={`pH at which minerals are just saturated in ${fluid.name}`}>
      <thead>
        <tr>
          <th scope="col">Calcium × phosphate, (mmol/L)²</th>
          <th scope="col">Fluorapatite</th>
          <th scope="col">Hydroxyapatite</th>
          <th scope="col">Enamel</th>
        </tr>
      </thead>
      <tbody>
        <MapTableRow row={here} isHere />
        {shown.map((row) => (
          <MapTableRow key={row.product} row={row} isHere={false} />
        ))}
      </tbody>
    </table>
  );
}

function MapTableRow({
  row: { product, fluorapatite, hydroxyapatite, enamel },
  isHere,
}: {
  readonly row: MapRow;
  readonly isHere: boolean;
}) {
  return (
    <tr>
      <th scope="row">
        {sayAmount(product)}
        {isHere && ', this fluid'}
      </th>
      {[fluorapatite, hydroxyapatite, enamel].map((pH, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: three columns that never move
        <td key={i}>{pH === null ? 'none' : pH.toFixed(2)}</td>
      ))}
    </tr>
  );
}
