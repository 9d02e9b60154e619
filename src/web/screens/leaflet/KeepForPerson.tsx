import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { LeafletBundle } from '../../../api/bundles.ts';
import type { PersonDetails } from '../../../api/personSchema.ts';
import { LANGUAGE_NAMES } from '../../../core/leaflet/languages.ts';
import { readDetails, saveDetails } from '../../data/personQueries.ts';
import { useSend } from '../../data/useSend.ts';

/** What of a leaflet is a fact of the person. */
type Print = Pick<PersonDetails, 'language' | 'largePrint'>;

interface KeepForPersonProps {
  readonly bundle: LeafletBundle;
  /** What is chosen on the page; absent = left as it was. */
  readonly chosen: Print;
}

/** A choice that the person will want next time too is kept in the person's record by a press, and taken back by another. */
export function KeepForPerson({ bundle, chosen }: KeepForPersonProps) {
  const { before, problem, isSending, keep } = useKeeping(bundle.patientId);
  const { kept } = bundle;
  const isOther =
    (chosen.language !== undefined && chosen.language !== kept.language) ||
    (chosen.largePrint !== undefined && chosen.largePrint !== (kept.largePrint ?? false));
  const name = bundle.leaflets[0]?.personName ?? '';
  return (
    <>
      {isOther && (
        <button type="button" className="action" disabled={isSending} onClick={() => void keep(chosen)}>
          Keep this for <bdi>{name}</bdi>
        </button>
      )}
      <span role="status">{problem ?? (before && !isOther ? `Kept: ${sayKept(kept)}.` : '')}</span>
      {before && !isOther && (
        <button type="button" className="link" disabled={isSending} onClick={() => void keep(before, true)}>
          Undo
        </button>
      )}
    </>
  );
}

function sayKept({ language, largePrint }: LeafletBundle['kept']): string {
  return [language === null ? '' : LANGUAGE_NAMES[language], largePrint === true ? 'large print' : 'ordinary print']
    .filter(Boolean)
    .join(', ');
}

function useKeeping(patientId: string) {
  const client = useQueryClient();
  const { send, isSending, problem } = useSend();
  const [before, setBefore] = useState<Print | null>(null);
  const keep = (print: Print, isUndo = false) =>
    send(async () => {
      const { value, version } = await readDetails(patientId);
      await saveDetails(patientId, withPrint(value, print, isUndo), version, {});
      setBefore(isUndo ? null : { language: value.language, largePrint: value.largePrint });
      for (const queryKey of [['leaflet'], ['person-page'], ['visit']]) void client.invalidateQueries({ queryKey });
    });
  return { before, problem, isSending, keep };
}

/** Taken back, what was not asked is not asked again; else only what was chosen changes. */
function withPrint(details: PersonDetails, print: Print, isUndo: boolean): PersonDetails {
  const { language, largePrint, ...rest } = details;
  const next = isUndo ? print : { language: print.language ?? language, largePrint: print.largePrint ?? largePrint };
  return {
    ...rest,
    ...(next.language !== undefined && { language: next.language }),
    ...(next.largePrint !== undefined && { largePrint: next.largePrint }),
  };
}
