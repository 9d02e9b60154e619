import { useId, useState } from 'react';

/** When the swabs were taken whose numbers are typed now: between two of one person lie 24 hours, so the time of typing will not do. */
export function SwabbedAt({ onChange }: { readonly onChange: (takenAt: string | undefined) => void }) {
  const id = useId();
  const [local, setLocal] = useState('');
  return (
    <p className="swabbed-at">
      <label htmlFor={id}>Swabbed at</label>{' '}
      <input
        id={id}
        type="datetime-local"
        value={local}
        aria-describedby={`${id}-hint`}
        onChange={(event) => {
          const typed = event.target.value;
          setLocal(typed);
          const time = Date.parse(typed);
          onChange(Number.isNaN(time) ? undefined : new Date(time).toISOString());
        }}
      />{' '}
      <span id={`${id}-hint`} className="hint">
        Left empty: now. Two swabs of one person within 24 hours are kept and do not count; of a person linked to a chart the second is
        refused.
      </span>
    </p>
  );
}
