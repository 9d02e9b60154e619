// Runs in the page, for bench/acidDayPage.ts. The page itself measures from the hand to the picture standing in the page; here it is measured
// on, until the frame with that picture was painted: the first turn of the main thread after it.
const afterFrame = new MessageChannel();
let last;
let waiting = [];

window.painted = [];
afterFrame.port1.onmessage = () => {
  window.painted.push(...waiting.map((since) => performance.now() - since));
  waiting = [];
};
new MutationObserver(() => {
  const since = performance.getEntriesByName('acid-day redraw').at(-1)?.startTime;
  if (since === undefined || since === last) return;
  last = since;
  waiting.push(since);
  if (waiting.length === 1) requestAnimationFrame(() => afterFrame.port2.postMessage(undefined));
}).observe(document, { subtree: true, childList: true, attributes: true });
