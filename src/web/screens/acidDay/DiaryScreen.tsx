import { diaryWords } from '../../../content/texts/diaryWords.ts';
import { directionOf } from '../../../core/leaflet/languages.ts';
import type { LeafletLanguage } from '../../../core/leaflet/types.ts';
import { useVisitBundle } from '../../data/queries.ts';
import { useReportPrint } from '../../data/useReportPrint.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { NotShown, PageOf, ShownStrip } from '../../parts/Shown.tsx';
import { useShown } from '../../shown.ts';

const LINES = 16;

/** A page for one day, to fill in at home with a pen: in the language of the visit, black on white. */
export function DiaryScreen({ visitId }: { readonly visitId: string }) {
  const query = useVisitBundle(visitId, 'acid-day');
  const { isOn } = useShown();
  useReportPrint(visitId, 'leaflet');
  return (
    <main className="leaflet-page" id="main">
      <ShownStrip />
      <p className="leaflet-actions">
        <Link to={`/visits/${visitId}/day`}>Back to the acid day</Link>
        {query.data && !isOn && (
          // biome-ignore lint/a11y/noAutofocus: one came here to print
          <button type="button" className="action primary" autoFocus onClick={() => print()}>
            Print
          </button>
        )}
      </p>
      {isOn ? (
        <NotShown />
      ) : query.data ? (
        <PageOf patientId={query.data.patientId}>
          <Diary language={query.data.input.visit.language} practice={query.data.input.practice.name} name={query.data.input.person.name} />
        </PageOf>
      ) : (
        <LoadState query={query} what="the diary" />
      )}
    </main>
  );
}

interface DiaryProps {
  readonly language: LeafletLanguage;
  readonly practice: string;
  readonly name: string;
}

function Diary({ language, practice, name }: DiaryProps) {
  const words = diaryWords[language];
  return (
    <article className="sheet diary" lang={language} dir={directionOf(language)}>
      <header>
        <p className="sheet-small">{practice}</p>
        <h1>{words.title}</h1>
        <p>
          <bdi>{name}</bdi> · {words.date} ……………………
        </p>
      </header>
      <section>
        <p>{words.how}</p>
        <p>{words.sleep}</p>
      </section>
      <table>
        <thead>
          <tr>
            {words.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: LINES }, (_, i) => `line ${i}`).map((line) => (
            <tr key={line}>
              {words.columns.map((column) => (
                <td key={column} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <footer className="sheet-foot">
        <p>{words.foot}</p>
      </footer>
    </article>
  );
}
