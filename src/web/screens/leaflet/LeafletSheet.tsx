import type { ReactNode } from 'react';
import { directionOf } from '../../../core/leaflet/languages.ts';
import type { Leaflet } from '../../../core/leaflet/types.ts';
import { DayOfUses } from './DayOfUses.tsx';
import { ToldStrip } from './ToldStrip.tsx';
import { useFitPages } from './useFitPages.ts';

/** One page to hand over, as it prints. */
export function LeafletSheet({ leaflet, isLarge = false }: { readonly leaflet: Leaflet; readonly isLarge?: boolean }) {
  const { labels } = leaflet;
  const sheet = useFitPages(leaflet, isLarge);
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
      <DayOfUses leaflet={leaflet} isLarge={isLarge} />
      <ToldStrip leaflet={leaflet} isLarge={isLarge} />
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
