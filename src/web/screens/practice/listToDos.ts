import type { PracticeView } from '../../../api/bundles.ts';
import type { Jurisdiction } from '../../../core/regimen/types.ts';

export interface ToDo {
  readonly id: 'place' | 'lot' | 'shelf' | 'password';
  readonly says: string;
  readonly link: string;
  readonly to: string;
}

interface Readiness {
  readonly jurisdiction: Jurisdiction;
  readonly shelfSize: number;
  readonly practice: Pick<PracticeView, 'lots'> & {
    readonly members: readonly Pick<PracticeView['members'][number], 'name' | 'active' | 'hasPassword'>[];
  };
  /** Somebody was seen already: a practice elsewhere has then chosen to stay with the strictest rules. */
  readonly isAnyoneSeen: boolean;
}

/** What a practice still has to say of itself; empty when it is ready. */
export function listToDos({ jurisdiction, shelfSize, practice: { lots, members }, isAnyoneSeen }: Readiness): readonly ToDo[] {
  const open = members.find((m) => m.active && !m.hasPassword);
  const all: readonly (ToDo | false)[] = [
    jurisdiction === 'unknown' &&
      !isAnyoneSeen && {
        id: 'place',
        says: 'Whose law and labels hold is not said. Until then the strictest rules and ages apply.',
        link: 'Say where you work',
        to: '/rules#settings',
      },
    lots.length === 0 && {
      id: 'lot',
      says: 'There is no swab lot. A reading without a lot is counted with caution.',
      link: 'Add a swab lot',
      to: '/practice#lots',
    },
    shelfSize === 0 && {
      id: 'shelf',
      says: 'The shelf is empty. Only what stands on it can be proposed.',
      link: 'Add an item to the shelf',
      to: '/shelf/new',
    },
    open !== undefined && {
      id: 'password',
      says: `${open.name} has no password. Only the address printed at the start opens these pages.`,
      link: 'Set a password',
      to: '/practice#team',
    },
  ];
  return all.filter((todo) => todo !== false);
}
