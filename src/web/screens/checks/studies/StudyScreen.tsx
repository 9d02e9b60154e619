import { useQueryClient } from '@tanstack/react-query';
import type { SessionView } from '../../../../api/apiTypes.ts';
import type { ChecksView } from '../../../../api/swabChecks.ts';
import { reportOf } from '../../../../core/checks/reportOf.ts';
import type { StudyRow } from '../../../../core/checks/studyOutcome.ts';
import type { Meter } from '../../../../core/reading/types.ts';
import { content } from '../../../content.ts';
import { useChecks } from '../../../data/checkQueries.ts';
import { dropStudy, reportStudy, type StudyRecord, useStudy } from '../../../data/studyQueries.ts';
import { useSend } from '../../../data/useSend.ts';
import { formatDate, plural } from '../../../format.ts';
import { Link } from '../../../parts/Link.tsx';
import { LoadState } from '../../../parts/LoadState.tsx';
import { OpenForm } from '../../../parts/OpenForm.tsx';
import { ReasonForm } from '../../../parts/ReasonForm.tsx';
import { useOpenForPrint } from '../../../parts/useOpenForPrint.ts';
import { EnterReadings } from './EnterReadings.tsx';
import { namesOf } from './namesOf.ts';
import { PasteReadings } from './PasteReadings.tsx';
import { StudyPeople } from './StudyPeople.tsx';
import { StudyReportView } from './StudyReportView.tsx';
import { sayUse } from './sayUse.ts';
import { isPlannedKind, nameOfKind, STATE_WORDS, STUDY_WORDS } from './studyWords.ts';

/** One study: its numbers while it runs, and what it says. */
export function StudyScreen({ studyId, session }: { readonly studyId: string; readonly session: SessionView }) {
  const record = useStudy(studyId);
  const checks = useChecks();
  useOpenForPrint();
  if (!record.data) return <LoadState query={record} what="the study" />;
  if (!checks.data) return <LoadState query={checks} what="meters and lots" />;
  return <StudyPage record={record.data} checks={checks.data} mayLead={session.member.roles.some((role) => role !== 'assistant')} />;
}

interface StudyPageProps {
  readonly record: StudyRecord;
  readonly checks: ChecksView;
  /** Takes wrong numbers back, reports, and gives up. */
  readonly mayLead: boolean;
}

function StudyPage({ record, checks, mayLead }: StudyPageProps) {
  const { study, readings } = record;
  const names = namesOf(study, checks);
  const meter = names.findMeter(study.meterId);
  const isOpen = study.state === 'planned' || study.state === 'running';
  return (
    <>
      <h1>{nameOfKind(study.kind)}</h1>
      <p className="opening">{sayWhere(record, names.meterName)}</p>
      {isPlannedKind(study.kind) && <p className="side-note">{`${STUDY_WORDS[study.kind].can} ${STUDY_WORDS[study.kind].cannot}`}</p>}
      <ul className="study-links">
        <li>
          <Link to="/checks/studies">All studies</Link>
        </li>
        <li>
          <Link to={`/checks/studies/${study.id}/sheet`}>Run sheet to print</Link>
        </li>
        {readings.length > 0 && (
          <li>
            <a href={`/api/studies/${study.id}/readings.csv`} download="swab-study.csv">
              Numbers as a CSV file
            </a>
          </li>
        )}
      </ul>
      {isOpen && meter && (
        <>
          <EnterReadings
            record={record}
            meterOf={(run) => (run.meterId === undefined ? undefined : names.findMeter(run.meterId)) ?? meter}
            sayRun={names.sayRun}
            mayVoid={mayLead}
          />
          <PasteReadings studyId={study.id} />
          {study.kind === 'paired-days' && <StudyPeople record={record} />}
          <SoFar record={record} checks={checks} meter={meter} mayLead={mayLead} />
        </>
      )}
      {study.report && (
        <section aria-label="Report">
          <h2>Report</h2>
          <StudyReportView record={record} names={names} sentences={study.report.sentences} rows={rowsOf(study.report.body)} />
        </section>
      )}
      {study.dropped && (
        <p>
          Given up by {study.dropped.by} on {formatDate(study.dropped.at)}: {study.dropped.reason}
        </p>
      )}
    </>
  );
}

function sayWhere({ study, readings }: StudyRecord, meterName: string): string {
  const planned = `Planned on ${formatDate(study.plannedAt)} by ${study.plannedBy}, on ${meterName}.`;
  if (study.report) return `Reported on ${formatDate(study.report.onDate)} by ${study.report.by}, on ${meterName}.`;
  if (study.state === 'dropped') return planned;
  const read = new Set(readings.filter(({ state }) => state === 'valid').map(({ run }) => run)).size;
  return `${planned} ${capital(STATE_WORDS[study.state])}: ${read} of ${plural(study.runs.length, 'swab')} read.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The report keeps what was computed; its shape belongs to the kind of study. */
function rowsOf(body: unknown): readonly StudyRow[] {
  const rows = (body as { readonly rows?: unknown } | null)?.rows;
  return Array.isArray(rows) ? (rows as readonly StudyRow[]) : [];
}

/** What the numbers say as they come in, and the two ends of a study. */
function SoFar({ record, checks, meter, mayLead }: StudyPageProps & { readonly meter: Meter }) {
  const { study, readings } = record;
  const outcome = reportOf(study, readings, meter, content.readingNoise);
  return (
    <section aria-label="What it says so far">
      <h2 tabIndex={-1} data-after-numbers>
        What it says so far
      </h2>
      {outcome.ok ? (
        <StudyReportView
          record={record}
          names={namesOf(study, checks)}
          sentences={outcome.report.sentences}
          rows={outcome.report.body.rows}
        />
      ) : (
        <>
          <p className="opening">{outcome.says}</p>
          <p>{outcome.wouldHelp}</p>
        </>
      )}
      {mayLead ? (
        <div className="actions">
          {outcome.ok && (
            <ReportForm
              record={record}
              uses={sayUse({
                meter,
                table: content.readingNoise,
                kind: study.kind,
                estimates: outcome.report.estimates,
                today: checks.today,
              })}
            />
          )}
          <DropForm record={record} />
        </div>
      ) : (
        <p className="hint">A lead, a hygienist or a dentist reports a study, and takes a wrong number back.</p>
      )}
    </section>
  );
}

function ReportForm({ record: { study, version }, uses }: { readonly record: StudyRecord; readonly uses: readonly string[] }) {
  const reread = useReread(study.id);
  const sending = useSend();
  return (
    <OpenForm
      label="Report this study"
      isAction
      form={(close) => (
        <form
          aria-label="Report this study"
          onSubmit={(event) => {
            event.preventDefault();
            void sending.send(async () => {
              await reportStudy(study.id, version).finally(reread);
            });
          }}
        >
          {uses.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <p>After that its numbers stay as they are.</p>
          <p className="problem" role="alert">
            {sending.problem}
          </p>
          <div className="actions">
            <button type="submit" className="action primary" disabled={sending.isSending}>
              Report and use from now on
            </button>
            <button type="button" className="action" onClick={() => close()}>
              Not yet
            </button>
          </div>
        </form>
      )}
    />
  );
}

function DropForm({ record: { study, version } }: { readonly record: StudyRecord }) {
  const reread = useReread(study.id);
  const sending = useSend();
  return (
    <OpenForm
      label="Give this study up"
      isAction
      form={(close) => (
        <ReasonForm
          about="Why this study is given up"
          hint="Its numbers stay on the record and are used for nothing."
          saveWords="Give it up"
          problem={sending.problem}
          onGive={(reason) =>
            void sending.send(() =>
              dropStudy(study.id, version, reason)
                .then(() => undefined, sayAndRead(reread))
                .then(reread),
            )
          }
          onLeave={() => close()}
        />
      )}
    />
  );
}

/** Where it was refused, the page shows what stands now. */
const sayAndRead = (reread: () => Promise<void>) => async (error: unknown) => {
  await reread();
  throw error;
};

/** The meter has other noise now, so whatever was read of it is read again. */
function useReread(studyId: string): () => Promise<void> {
  const client = useQueryClient();
  return async () => {
    for (const queryKey of [['study', studyId], ['checks'], ['practice'], ['person']]) await client.invalidateQueries({ queryKey });
  };
}
