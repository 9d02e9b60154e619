import type { MouseEvent, ReactNode } from 'react';
import { goTo } from '../routing.ts';
import { isShown } from '../shown.ts';

interface LinkProps {
  readonly to: string;
  readonly children: ReactNode;
  readonly isCurrent?: boolean;
  readonly className?: string;
  readonly id?: string;
  readonly keys?: string;
}

/** A real address, followed without loading the page anew; the usual keys for a new tab still work. */
export function Link({ to, children, isCurrent = false, className, id, keys }: LinkProps) {
  const follow = (event: MouseEvent) => {
    // Turned to the patient, a link never opens a page of its own: that one would be turned to nobody.
    const isPlain = event.button === 0 && isShown();
    if (!isPlain && (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey)) return;
    event.preventDefault();
    goTo(to);
  };
  return (
    <a href={to} id={id} onClick={follow} aria-current={isCurrent ? 'page' : undefined} className={className} aria-keyshortcuts={keys}>
      {children}
    </a>
  );
}
