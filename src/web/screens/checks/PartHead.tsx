import { Key } from '../../parts/Key.tsx';

/** Head of one part of the page, reached by its number. */
export function PartHead({ title, number }: { readonly title: string; readonly number: number }) {
  return (
    <h2 tabIndex={-1} data-part={number}>
      {title} <Key>{number}</Key>
    </h2>
  );
}
