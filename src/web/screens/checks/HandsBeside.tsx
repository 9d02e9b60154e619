import { useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import { compareHands, type HandsLine, type HandsSpread, type RatioRange } from '../../../core/checks/compareHands.ts';
import { judgeControls } from '../../../core/checks/judgeControls.ts';
import { FunnelChart, MovingChart } from '../../charts/HandsCharts.tsx';
import { formatDate } from '../../format.ts';
import { ChoiceLine } from '../../parts/fields.tsx';
import { LastOnPaper, rowOnPaper } from '../../parts/OnPaper.tsx';
import { sayFunnel, sayMoving } from './sayHands.ts';

/** Everybody's controls beside each other, and one member's over time. */
export function HandsBeside({ view }: { readonly view: ChecksView }) {
  const compared = compareHands(
    judgeControls(
      view.controls,
      view.plans.map(({ plan }) => plan),
      view.resolutions,
    ),
  );
  if (!compared.ok) return <p className="hint">{compared.says}</p>;
  return (
    <>
      <Together lines={compared.lines} sdLn={compared.sdLn} all={compared.all} />
      <OneOverTime lines={compared.lines} />
    </>
  );
}

function Together({ lines, ...spread }: HandsSpread & { readonly lines: readonly HandsLine[] }) {
  return (
    <>
      <h3 className="meter-head">Controls of each member beside the others'</h3>
      <p data-hands="together">{sayFunnel(lines)}</p>
      <figure>
        <FunnelChart lines={lines} {...spread} />
        <details>
          <summary>Show members as table</summary>
          <table className="stacks">
            <thead>
              <tr>
                <th scope="col">Member</th>
                <th scope="col">Controls</th>
                <th scope="col">Against all</th>
                <th scope="col">Chance alone</th>
                <th scope="col">In words</th>
              </tr>
            </thead>
            <tbody>
              {lines.map(({ operator, controls, ratio, funnel, says }) => (
                <tr key={operator}>
                  <th scope="row">{operator}</th>
                  <td data-label="Controls">{controls}</td>
                  <td data-label="Against all">{sayChange(ratio)}</td>
                  <td data-label="Chance alone">{sayRange(funnel)}</td>
                  <td data-label="In words">{says}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      </figure>
      <p className="hint">Each control is held against the mean of its meter and lot, so a drift that all share is nobody's.</p>
    </>
  );
}

function OneOverTime({ lines }: { readonly lines: readonly HandsLine[] }) {
  const [chosen, setChosen] = useState(() => (lines.find(({ isApartLately }) => isApartLately) ?? lines[0])?.operator ?? '');
  const member = lines.find(({ operator }) => operator === chosen) ?? lines[0];
  if (!member) return null;
  return (
    <>
      <h3 className="meter-head">Controls of one member over time</h3>
      <ChoiceLine
        label="Member"
        value={member.operator}
        options={lines.map(({ operator }) => ({ id: operator, label: operator }))}
        onChange={setChosen}
      />
      <p data-hands="one" aria-live="polite">
        {sayMoving(member)}
      </p>
      <figure>
        <MovingChart operator={member.operator} points={member.points} />
        <details>
          <summary>Show controls of {member.operator} as table</summary>
          <LastOnPaper count={member.points.length} one="control" />
          <table>
            <thead>
              <tr>
                <th scope="col">Taken</th>
                <th scope="col">Against all</th>
                <th scope="col">Average</th>
                <th scope="col">Chance alone</th>
              </tr>
            </thead>
            <tbody>
              {[...member.points].reverse().map(({ id, takenAt, ratio, moving }, at) => (
                <tr key={id} className={rowOnPaper(at)}>
                  <th scope="row">{formatDate(takenAt)}</th>
                  <td>{sayChange(ratio)}</td>
                  <td>{moving ? sayChange(moving.ratio) : 'not counted'}</td>
                  <td>{moving ? sayRange(moving) : ''}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      </figure>
    </>
  );
}

/** "+4.2 %"; a true minus, so that the columns stand alike. */
function sayChange(ratio: number): string {
  const percent = (100 * (ratio - 1)).toFixed(1);
  const size = percent.replace('-', '');
  return size === '0.0' ? '0.0 %' : `${percent.startsWith('-') ? '−' : '+'}${size} %`;
}

const sayRange = ({ low, high }: RatioRange): string => `${sayChange(low)} to ${sayChange(high)}`;
