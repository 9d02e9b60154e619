import type { UseQueryResult } from '@tanstack/react-query';

/** While something is read, or when it could not be. */
export function LoadState({
  query,
  what,
}: {
  readonly query: Pick<UseQueryResult, 'isPending' | 'error' | 'refetch'>;
  readonly what: string;
}) {
  if (query.error) {
    return (
      <p role="alert">
        Could not read {what}: {query.error.message}{' '}
        <button type="button" className="link" onClick={() => void query.refetch()}>
          Try again
        </button>
      </p>
    );
  }
  return (
    <p className="side-note" role="status">
      Reading {what} ...
    </p>
  );
}
