// A worker of Node 20 does not take the loader over from its parent.
import { register } from 'tsx/esm/api';

register();
await import('./acidDayBandWork.ts');
