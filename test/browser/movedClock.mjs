// Loaded before the server by NODE_OPTIONS: its clock differs from the computer's by the milliseconds in the file EBBLINE_TEST_CLOCK,
// which a test may write anew while the server runs.
import { readFileSync } from 'node:fs';

const RealDate = Date;
const movedMs = () => Number(readFileSync(process.env.EBBLINE_TEST_CLOCK, 'utf8'));
const now = () => RealDate.now() + movedMs();
globalThis.Date = class extends RealDate {
  constructor(...given) {
    if (given.length === 0) super(now());
    else super(...given);
  }
  static now() {
    return now();
  }
};
