import { Key } from '../../parts/Key.tsx';
import type { DayWork } from './dayWork.ts';

/** The strip goes on the leaflet only where a professional says so: in words, without numbers. */
export function OnLeaflet({ work }: { readonly work: DayWork }) {
  const { told, at, isClosed, save } = work;
  if (!told) return null;
  const isOn = told.onLeaflet === at;
  if (isClosed) return isOn ? <p className="small">The strip of this day stands on the leaflet.</p> : null;
  return (
    <p className="off-paper">
      <label className="check">
        <input type="checkbox" checked={isOn} aria-keyshortcuts="l" onChange={() => save(toggleLeaflet(told, at))} />
        <span>
          <Key>l</Key> Put this day's strip on the leaflet, without numbers
        </span>
      </label>
    </p>
  );
}

export function toggleLeaflet(told: NonNullable<DayWork['told']>, at: number): NonNullable<DayWork['told']> {
  const { onLeaflet, ...rest } = told;
  return onLeaflet === at ? rest : { ...rest, onLeaflet: at };
}
