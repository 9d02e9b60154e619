import { useMemo, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import { oralFluids } from '../../../content/oralFluids.ts';
import { type FluidMap, fluidMap } from '../../../core/chemistry/fluidMap.ts';
import { sayCriticalPh } from '../../../core/chemistry/sayCriticalPh.ts';
import type { MeasuredSaliva } from '../../../core/visit/describedDays.ts';
import { listProducts, mapDomain } from '../../charts/fluidMapLayout.ts';
import { useVisitBundle } from '../../data/queries.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { useOpenForPrint } from '../../parts/useOpenForPrint.ts';
import { usePrintFoot } from '../../printFoot.ts';
import { AcidForm } from './AcidForm.tsx';
import { AddedForm } from './AddedForm.tsx';
import { FluidMaps } from './FluidMaps.tsx';
import { FluorideForm } from './FluorideForm.tsx';
import { HypochloriteForm } from './HypochloriteForm.tsx';
import { MeasuredForm } from './MeasuredForm.tsx';
import type { FluidsMeasured } from './measuredFluids.ts';

const { commonPractice } = oralFluids;
const PARTS = [
  ['map', 'Saturation map'],
  ['fluoride', 'Fluoride of a label'],
  ['acid', 'Acid of a drink or rinse'],
  ['calcium', 'Added calcium'],
  ['hypochlorite', 'Hypochlorite'],
] as const;

interface FluidsScreenProps {
  /** null: of nobody; all is typical until something measured is typed. */
  readonly visitId: string | null;
  readonly session: SessionView;
}

/** Chemistry of saliva, plaque fluid and products: of one visit, or of nobody. */
export function FluidsScreen({ visitId, session }: FluidsScreenProps) {
  return visitId === null ? <Fluids today={session.today} of={null} /> : <FluidsOfVisit visitId={visitId} today={session.today} />;
}

function FluidsOfVisit({ visitId, today }: { readonly visitId: string; readonly today: string }) {
  const query = useVisitBundle(visitId, 'fluids');
  if (!query.data) return <LoadState query={query} what="the fluids" />;
  const { person, visit } = query.data.input;
  return <Fluids today={today} of={{ visitId, name: person.name, saliva: visit.acidDay?.saliva }} />;
}

interface OfVisit {
  readonly visitId: string;
  readonly name: string;
  readonly saliva: MeasuredSaliva | undefined;
}

function Fluids({ today, of }: { readonly today: string; readonly of: OfVisit | null }) {
  const [measured, setMeasured] = useState<FluidsMeasured>({ saliva: ionsOf(of?.saliva), plaqueFluid: {} });
  const maps = useMemo(() => mapsOf(measured), [measured]);
  useOpenForPrint();
  usePrintFoot(of ? { name: of.name } : {});
  return (
    <div className="fluids">
      <FluidsTitle of={of} />
      <CriticalPh maps={maps} />
      <nav aria-label="Parts of this page" className="parts">
        <ul>
          {PARTS.map(([id, name]) => (
            <li key={id}>
              <a href={`#${id}`}>{name}</a>
            </li>
          ))}
        </ul>
      </nav>
      <section id="map" aria-label="Saturation map">
        <h2>Saturation map</h2>
        <FluidMaps maps={maps} domain={mapDomain(maps)} commonPh={commonPractice.pH} />
        <MeasuredForm saliva={of?.saliva} onMeasured={setMeasured} />
      </section>
      <FluorideForm />
      <AcidForm />
      <AddedForm />
      <HypochloriteForm today={today} />
    </div>
  );
}

const ionsOf = (saliva: MeasuredSaliva | undefined) =>
  saliva ? { calcium: saliva.calciumMmolPerL, phosphate: saliva.phosphateMmolPerL } : {};

function mapsOf({ saliva, plaqueFluid }: FluidsMeasured): readonly FluidMap[] {
  const products = listProducts([productOf(saliva), productOf(plaqueFluid)].filter((product) => product !== undefined));
  return [fluidMap(oralFluids.saliva, saliva, products), fluidMap(oralFluids.plaqueFluid, plaqueFluid, products)];
}

const productOf = ({ calcium, phosphate }: FluidsMeasured['saliva']): number | undefined =>
  calcium === undefined || phosphate === undefined ? undefined : calcium * phosphate;

function FluidsTitle({ of }: { readonly of: OfVisit | null }) {
  return (
    <header className="visit-head">
      <h1>
        {of ? (
          <>
            <bdi>{of.name}</bdi>, fluids
          </>
        ) : (
          'Fluids'
        )}
      </h1>
      <p className="visit-links">
        {of ? (
          <>
            <Link to={`/visits/${of.visitId}/day`}>Acid day</Link>
            <Link to={`/visits/${of.visitId}`}>Visit</Link>
          </>
        ) : (
          <Link to="/rules">Rules</Link>
        )}
      </p>
    </header>
  );
}

/** One sentence for both fluids, then the popular figure with what it is. */
function CriticalPh({ maps }: { readonly maps: readonly FluidMap[] }) {
  const said = maps.map(({ critical, fluid }) => sayCriticalPh(critical, fluid.name));
  return (
    <>
      <p className="opening" role="status">
        Enamel begins to dissolve below pH {said.join('; below ')}.
      </p>
      <p className="side-note">
        The popular {commonPractice.pH} is common practice, the same for everybody. A critical pH compares fluids at 37 °C; it does not
        measure teeth.{' '}
        <Why label="sources" about="critical pH">
          <SourceList sources={[...maps.flatMap(({ critical }) => critical.sources), commonPractice.source]} />
        </Why>
      </p>
    </>
  );
}
