// Runs in the page, for bench/page.ts. Of each key that changed the page: from the moment the browser got it until the frame with the
// first change was drawn, and until the last frame in which level or plan became
// another: where an answer changes the plan, the plan comes right after it.
const textOf = () => document.querySelector('.side')?.textContent ?? '';
const afterFrame = new MessageChannel();
let key;
let isAwaited = false;

window.redraws = [];
window.addEventListener(
  'keydown',
  ({ timeStamp }) => {
    key = { at: timeStamp, before: textOf() };
  },
  { capture: true },
);
afterFrame.port1.onmessage = () => {
  isAwaited = false;
  const ms = performance.now() - key.at;
  const text = textOf();
  if (!key.redraw) {
    key.redraw = { ms, lastMs: ms, isSummaryChanged: text !== key.before };
    window.redraws.push(key.redraw);
  } else if (text !== key.text) Object.assign(key.redraw, { lastMs: ms, isSummaryChanged: text !== key.before });
  key.text = text;
};
new MutationObserver(() => {
  if (!key || isAwaited) return;
  isAwaited = true;
  requestAnimationFrame(() => afterFrame.port2.postMessage(undefined));
}).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
