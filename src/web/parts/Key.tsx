import type { ReactNode } from 'react';

/** The key that does it, beside the words. Read aloud through aria-keyshortcuts of the control, so hidden here. */
export function Key({ children }: { readonly children: ReactNode }) {
  return (
    <span className="key" aria-hidden="true">
      {children !== '' && <span>{children}</span>}
    </span>
  );
}
