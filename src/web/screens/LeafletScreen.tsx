import { Fragment, type ReactNode, type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { directionOf, LANGUAGE_NAMES, LEAFLET_LANGUAGES } from '../../core/leaflet/languages.ts';
import { type AmountShape, hatchBox, layOutDayStrip, type RoundedBox, shapeOfAmount } from '../../core/leaflet/stripLayout.ts';
import { layOutStripRow, rowInDirection } from '../../core/leaflet/stripRowLayout.ts';
import type { DayStep, Leaflet, LeafletLanguage } from '../../core/leaflet/types.ts';
import { useLeaflet } from '../data/queries.ts';
import { useReportPrint } from '../data/useReportPrint.ts';
import { Link } from '../parts/Link.tsx';
import { LoadState } from '../parts/LoadState.tsx';
import { PageOf, ShownStrip } from '../parts/Shown.tsx';

/** The page to hand over: on the screen as it prints, on A4 or Letter, black on white, in the language and size that are chosen. */
export function LeafletScreen({ visitId }: { readonly visitId: string }) {
  const [language, setLanguage] = useState<LeafletLanguage | ''>('');
  const [isLarge, setLarge] = useState(false);
  const query = useLeaflet(visitId, language);
  useReportPrint(visitId, 'leaflet');
  return (
    <main className="leaflet-page" id="main">
      <ShownStrip />
      <p className="leaflet-actions">
        <Link to={`/visits/${visitId}`}>Back to the visit</Link>
        {query.data && (
          // biome-ignore lint/a11y/noAutofocus: one came here to print, by a key
          <button type="button" className="action primary" autoFocus onClick={() => print()}>
            Print
          </button>
        )}
      </p>
      <p className="leaflet-actions">
        <label>
          Language{' '}
          <select value={language} onChange={({ target }) => setLanguage(target.value as LeafletLanguage | '')}>
            <option value="">as the visit asks</option>
            {LEAFLET_LANGUAGES.map((id) => (
              <option key={id} value={id}>
                {LANGUAGE_NAMES[id]}
              </option>
            ))}
          </select>
        </label>
        <label>
          <input type="checkbox" checked={isLarge} onChange={({ target }) => setLarge(target.checked)} /> Large print
        </label>
      </p>
      {query.data ? (
        <PageOf patientId={query.data.patientId}>
          {query.data.leaflets.map((leaflet) => (
            <Fragment key={`${leaflet.home} ${leaflet.language}`}>
              <BeforePrinting leaflet={leaflet} />
              <LeafletSheet leaflet={leaflet} isLarge={isLarge} />
            </Fragment>
          ))}
        </PageOf>
      ) : (
        <LoadState query={query} what="the leaflet" />
      )}
    </main>
  );
}

/** What the professional has to know of a page before it is handed over; none of it is printed. */
function BeforePrinting({ leaflet: { language, review, notInLanguage } }: { readonly leaflet: Leaflet }) {
  if (review === null && notInLanguage.length === 0) return null;
  const name = LANGUAGE_NAMES[language];
  return (
    <div className="leaflet-actions leaflet-notes">
      {review !== null && <p>The medical wording in {name} is to be reviewed by a native-speaking clinician.</p>}
      {notInLanguage.length > 0 && (
        <p className="unknown">
          No name in {name}, so the English one stands on this page: {notInLanguage.join('; ')}. Names are written on Shelf.
        </p>
      )}
    </div>
  );
}

/** Text width of A4 between margins of 18 mm; Letter has 6 mm to spare. */
const WIDTH_MM = 174;
const GUTTER_MM = 5;

export function LeafletSheet({ leaflet, isLarge = false }: { readonly leaflet: Leaflet; readonly isLarge?: boolean }) {
  const { labels } = leaflet;
  const sheet = useFitOnePage(leaflet, isLarge);
  return (
    <article className={isLarge ? 'sheet large' : 'sheet'} lang={leaflet.language} dir={directionOf(leaflet.language)} ref={sheet}>
      <header>
        <p className="sheet-small">{leaflet.title}</p>
        <h1>
          <bdi>{leaflet.personName}</bdi>
        </h1>
        {leaflet.home !== undefined && (
          <p className="sheet-home">
            <bdi>{leaflet.home}</bdi>
          </p>
        )}
        <p className="sheet-small">
          <bdi>{leaflet.practiceName}</bdi>
          {leaflet.language === 'ar' ? '،' : ','} <bdi>{leaflet.date}</bdi>
        </p>
      </header>
      <section className="goals">
        <Goal label={labels.keep} text={leaflet.keep} />
        {leaflet.tryThis !== null && <Goal label={labels.try} text={leaflet.tryThis} />}
      </section>
      <DayStrip leaflet={leaflet} isLarge={isLarge} />
      {leaflet.strip && <ToldStrip strip={leaflet.strip} direction={directionOf(leaflet.language)} />}
      {leaflet.advice.length > 0 && (
        <section>
          <h2>{labels.advice}</h2>
          <ul className={leaflet.advice.length > 1 ? 'cautions two' : 'cautions'}>
            {leaflet.advice.map((advice) => (
              <li key={advice}>{advice}</li>
            ))}
          </ul>
        </section>
      )}
      {leaflet.cautions.length > 0 && (
        <section>
          <h2>{labels.cautions}</h2>
          <ul className={leaflet.cautions.length > 4 ? 'cautions two' : 'cautions'}>
            {leaflet.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      )}
      <section className="ending">
        {leaflet.call.length > 0 && <Row label={labels.call}>{leaflet.call.join(' ')}</Row>}
        {leaflet.stopUsing.length > 0 && <Row label={labels.stop}>{leaflet.stopUsing.join('. ')}.</Row>}
        {leaflet.released !== undefined && <Row label={labels.released}>{leaflet.released.join('; ')}.</Row>}
        {leaflet.monthlyCost !== null && <Row label={labels.cost}>{leaflet.monthlyCost}</Row>}
        <Row label={labels.next}>
          <strong className="next-date">{leaflet.nextDate}</strong>
        </Row>
      </section>
      <footer className="sheet-foot">
        {leaflet.demoNotice !== null && <p>{leaflet.demoNotice}</p>}
        {leaflet.review !== null && <p>{leaflet.review}</p>}
        <p>
          {isLarge ? (
            <WithName text={`${leaflet.personName} · ${leaflet.date}`} name={leaflet.personName} />
          ) : (
            <WithName text={leaflet.foot} name={leaflet.personName} />
          )}
        </p>
      </footer>
    </article>
  );
}

/** What one page holds between its margins on the shorter of the two papers, Letter, mm. */
const PAGE_MM = 252;
const MOST_DENSE = 3;

/** Sets the page closer, step by step, until it is one page: first the spaces, then the type, never below 12 pt but for the last lines. */
function useFitOnePage(leaflet: Leaflet, isLarge: boolean): RefObject<HTMLElement | null> {
  const sheet = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another leaflet has another height
  useLayoutEffect(() => {
    const tighten = () => {
      const page = sheet.current;
      if (!page) return;
      if (isLarge) {
        delete page.dataset.density;
        return;
      }
      const pxPerMm = page.clientWidth / 210;
      for (let density = 0; density <= MOST_DENSE; density += 1) {
        page.dataset.density = String(density);
        const height = [...page.children].reduce((sum, part) => sum + part.getBoundingClientRect().height, 0);
        const gaps = (page.children.length - 1) * Number.parseFloat(getComputedStyle(page).rowGap);
        if ((height + gaps) / pxPerMm <= PAGE_MM) return;
      }
    };
    tighten();
    // The typeface may come after the words.
    void document.fonts.ready.then(tighten);
  }, [leaflet, isLarge]);
  return sheet;
}

/** A sentence with the name set apart, so that one written from right to left turns nothing beside it. */
function WithName({ text, name }: { readonly text: string; readonly name: string }) {
  const [before, after] = text.split(name);
  return (
    <>
      {before}
      {after !== undefined && <bdi>{name}</bdi>}
      {after}
    </>
  );
}

function Goal({ label, text }: { readonly label: string; readonly text: string }) {
  return (
    <div>
      <h2 className="sheet-small">{label}</h2>
      <p className="goal">{text}</p>
    </div>
  );
}

function Row({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <div className="ending-row">
      <h2>{label}</h2>
      <p>{children}</p>
    </div>
  );
}

const BAND_MM = 3;

/** The day as one line from morning to night, what to do under its time. */
function DayStrip({ leaflet, isLarge }: { readonly leaflet: Leaflet; readonly isLarge: boolean }) {
  const { columns, night, besides } = layOutDayStrip(leaflet.day, WIDTH_MM, GUTTER_MM);
  if (columns.length === 0 && besides.length === 0) return null;
  return (
    <section className="day">
      <h2>{leaflet.labels.day}</h2>
      {leaflet.who !== null && (
        <p>
          {leaflet.labels.who}: {leaflet.who}
        </p>
      )}
      {columns.length > 0 && (
        <>
          <svg className="strip-line" viewBox={`0 0 ${WIDTH_MM} ${BAND_MM + 2}`} aria-hidden="true">
            {night &&
              hatchBox({ xMm: night.xMm, yMm: 1, widthMm: night.widthMm, heightMm: BAND_MM }, 1.4).map((s) => (
                <line key={s.x1 + s.x2} {...s} className="thin" />
              ))}
            <line x1={0} y1={1} x2={WIDTH_MM} y2={1} className="thin" />
            <line x1={0} y1={1 + BAND_MM} x2={WIDTH_MM} y2={1 + BAND_MM} className="thin" />
            {columns.map(({ when, xMm }) => (
              <line key={when} x1={xMm + 0.3} y1={0} x2={xMm + 0.3} y2={BAND_MM + 2} className="thick" />
            ))}
          </svg>
          <div className="strip-columns">
            {columns.map(({ when, widthMm, steps }) => (
              <div key={when} style={isLarge ? {} : { width: `${widthMm}mm` }}>
                <h3>{leaflet.slots[when]}</h3>
                {steps.map((step) => (
                  <Step key={step.text} step={step} widthMm={isLarge ? WIDTH_MM : widthMm} />
                ))}
              </div>
            ))}
          </div>
        </>
      )}
      {besides.map(({ when, steps }) => (
        <div key={when} className="ending-row">
          <h3>{leaflet.slots[when]}</h3>
          <div>
            {steps.map((step) => (
              <p key={step.text}>
                {step.text}
                {step.amount ? ` (${step.amount.text})` : ''}
              </p>
            ))}
          </div>
        </div>
      ))}
      {leaflet.signedBy.length > 0 && <p className="sheet-small">{leaflet.signedBy.join(' ')}</p>}
    </section>
  );
}

/** The day as it was told: dark where the plaque is on the acid side in the model, without a number. */
function ToldStrip({
  strip: { rows, words },
  direction,
}: {
  readonly strip: NonNullable<Leaflet['strip']>;
  readonly direction: 'ltr' | 'rtl';
}) {
  return (
    <section className="told-strip">
      <h2>{words.title}</h2>
      {rows.map((row) => {
        const { band, acid, night, marks, words: names, heightMm } = layOutStripRow(rowInDirection(row, direction), WIDTH_MM);
        return (
          <div key={row.of}>
            {rows.length > 1 && <h3>{words[row.of]}</h3>}
            <svg
              viewBox={`0 0 ${WIDTH_MM} ${heightMm}`}
              role="img"
              aria-label={`${words[row.of]}: ${row.eaten.map(({ name }) => name).join(', ')}`}
            >
              <rect className="outline" x={band.xMm} y={band.yMm} width={band.widthMm} height={band.heightMm} />
              {night.map(({ xMm, yMm, widthMm }) => (
                <line key={xMm} className="thin" x1={xMm} x2={xMm + widthMm} y1={yMm} y2={yMm} strokeDasharray="0.5 1" />
              ))}
              {acid.map((box) => (
                <g key={box.xMm}>
                  <rect className="outline" x={box.xMm} y={box.yMm} width={box.widthMm} height={box.heightMm} />
                  {hatchBox(box, 1).map((s) => (
                    <line key={`${s.x1} ${s.y1}`} {...s} className="thick" />
                  ))}
                </g>
              ))}
              {marks.map((box) => (
                <rect key={box.xMm} className="paste" x={box.xMm} y={box.yMm} width={box.widthMm} height={box.heightMm} rx={0.8} />
              ))}
              {names.map(({ x, yMm, text }) => (
                <text key={`${x} ${text}`} x={x} y={yMm} direction="ltr">
                  {text}
                </text>
              ))}
            </svg>
          </div>
        );
      })}
      <p className="sheet-small">
        {words.dark} {words.caution}
      </p>
    </section>
  );
}

function Step({ step, widthMm }: { readonly step: DayStep; readonly widthMm: number }) {
  const found = step.amount && shapeOfAmount(step.amount);
  const shape = found && found.widthMm <= widthMm ? found : undefined;
  return (
    <div className="step">
      <p>
        {step.text}
        {step.amount && !shape ? ` ${step.amount.text}.` : ''}
      </p>
      {step.amount && shape && (
        <p className="amount">
          <Drawing shape={shape} />
          <span>{step.amount.text}</span>
        </p>
      )}
    </div>
  );
}

/** In true size when printed at 100 %. */
function Drawing({ shape }: { readonly shape: AmountShape }) {
  const { widthMm, heightMm } = shape;
  return (
    <svg
      viewBox={`-0.2 -0.2 ${widthMm + 0.4} ${heightMm + 0.4}`}
      style={{ width: `${widthMm + 0.4}mm`, height: `${heightMm + 0.4}mm` }}
      aria-hidden="true"
    >
      {shape.kind === 'brush' ? <Brush shape={shape} /> : <Cup shape={shape} />}
    </svg>
  );
}

const boxOf = ({ xMm, yMm, widthMm, heightMm, radiusMm }: RoundedBox) => ({
  x: xMm,
  y: yMm,
  width: widthMm,
  height: heightMm,
  rx: radiusMm,
});

function Brush({ shape: { head, handle, paste } }: { readonly shape: Extract<AmountShape, { kind: 'brush' }> }) {
  const right = handle.xMm + handle.widthMm;
  return (
    <>
      <rect {...boxOf(head)} className="outline" />
      <path className="outline" d={`M${handle.xMm},${handle.yMm}H${right}M${handle.xMm},${handle.yMm + handle.heightMm}H${right}`} />
      <rect {...boxOf(paste)} className="paste" />
    </>
  );
}

function Cup({ shape: { widthMm, heightMm, levelMm } }: { readonly shape: Extract<AmountShape, { kind: 'cup' }> }) {
  return (
    <>
      {hatchBox({ xMm: 0, yMm: heightMm - levelMm, widthMm, heightMm: levelMm }, 1.6).map((s) => (
        <line key={s.x1 + s.x2} {...s} className="thin" />
      ))}
      <line x1={0} y1={heightMm - levelMm} x2={widthMm} y2={heightMm - levelMm} className="thick" />
      <path className="outline" d={`M0,0V${heightMm}H${widthMm}V0`} />
    </>
  );
}
