import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { VersionedShelfItem } from '../../../api/bundles.ts';
import type { ShelfItem } from '../../../core/regimen/types.ts';
import { callApi } from '../../data/api.ts';
import { saveShelfItem, useShelf } from '../../data/queries.ts';
import { useVersionedSave } from '../../data/useVersionedSave.ts';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { LoadState } from '../../parts/LoadState.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { goTo } from '../../routing.ts';
import { makeId, randomBytes } from '../../slug.ts';
import { lineOf } from '../ShelfScreen.tsx';
import { ShelfFields } from './ShelfFields.tsx';
import { sayItem } from './sayItem.ts';
import { buildShelfItem, draftOf, emptyDraft, type ShelfProblems } from './shelfDraft.ts';

/** One item of the shelf: a new one, or one that is there. */
export function ShelfItemScreen({ itemId }: { readonly itemId: string | null }) {
  const shelf = useShelf();
  if (!shelf.data) return <LoadState query={shelf} what="the shelf" />;
  const entry = shelf.data.find(({ item }) => item.id === itemId);
  if (itemId !== null && !entry) return <h1>There is no such item on the shelf.</h1>;
  return (
    <>
      <h1>{entry ? `Change: ${entry.item.name}` : 'Add an item'}</h1>
      <p className="opening">Take the pack in your hand. What you leave empty stays not known, and the rules then ask first.</p>
      <ItemForm entry={entry} />
    </>
  );
}

async function readItem(id: string) {
  const { items } = await callApi<{ readonly items: readonly VersionedShelfItem[] }>('GET', '/api/shelf');
  const found = items.find(({ item }) => item.id === id);
  return found && { value: found.item, version: found.version };
}

function ItemForm({ entry }: { readonly entry: VersionedShelfItem | undefined }) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const [draft, setDraft] = useState(() => (entry ? draftOf(entry.item) : emptyDraft));
  const [problems, setProblems] = useState<ShelfProblems>({});
  // The id is made once, so that a second try after a lost answer meets the first.
  const [newId, setNewId] = useState<string | null>(null);
  const idOf = (name: string) => entry?.item.id ?? newId ?? makeId(name, randomBytes);
  const leave = async (id: string | undefined) => {
    await client.invalidateQueries({ queryKey: ['shelf'] });
    goTo(id === undefined ? '/shelf' : `/shelf#${lineOf(id)}`);
  };
  const saving = useVersionedSave<ShelfItem>({
    version: entry?.version ?? 0,
    write: saveShelfItem,
    readAgain: () => readItem(idOf('')),
    onSaved: (item) => leave(item.id),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const built = buildShelfItem(draft, idOf);
    setProblems(built.ok ? {} : built.problems);
    if (!built.ok) return focusFirstProblem(form.current);
    setNewId(built.item.id);
    void saving.save(built.item);
  };
  return (
    <form ref={form} className="form" noValidate onSubmit={submit} aria-label={entry ? 'Item' : 'New item'}>
      <ShelfFields draft={draft} problems={problems} onChange={(part) => setDraft({ ...draft, ...part })} />
      <SaveBar saving={saving} say={sayItem} problemCount={Object.keys(problems).length} onLeave={() => void leave(entry?.item.id)} />
    </form>
  );
}
