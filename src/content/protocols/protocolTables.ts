import type { ProtocolTable } from '../../core/risk/protocol.ts';
import { childList0to5 } from './childList0to5.ts';
import { childList6plus } from './childList6plus.ts';
import { fourLevel2019 } from './fourLevel2019.ts';
import { fourLevelChild2010 } from './fourLevelChild2010.ts';
import { scoredList0to6 } from './scoredList0to6.ts';
import { scoredListOver6 } from './scoredListOver6.ts';

/** Every published list in this edition of the content, in the order in which they are compared. */
export const protocolTables: readonly ProtocolTable[] = [
  fourLevel2019,
  fourLevelChild2010,
  scoredList0to6,
  scoredListOver6,
  childList6plus,
  childList0to5,
];
