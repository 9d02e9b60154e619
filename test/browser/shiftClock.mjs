// Loaded before the server by NODE_OPTIONS: its clock differs from the computer's by EBBLINE_TEST_CLOCK_SHIFT_MS.
const shiftMs = Number(process.env.EBBLINE_TEST_CLOCK_SHIFT_MS ?? 0);
const RealDate = Date;
globalThis.Date = class extends RealDate {
  constructor(...given) {
    if (given.length === 0) super(RealDate.now() + shiftMs);
    else super(...given);
  }
  static now() {
    return RealDate.now() + shiftMs;
  }
};
