// Runs in the page, for bench/page.ts. Of each key that changed the page: from the moment the browser got it until the frame with the
// first change was drawn. The program works out a visit and draws it in the same turn, so that there is no later one.
const textOf = () => document.querySelector('.side')?.textContent ?? '';
const afterFrame = new MessageChannel();
let key;

window.redraws = [];
window.addEventListener(
  'keydown',
  ({ timeStamp }) => {
    key = { at: timeStamp, before: textOf(), isDrawn: false };
  },
  { capture: true },
);
afterFrame.port1.onmessage = () => {
  if (!key) return;
  window.redraws.push({ ms: performance.now() - key.at, isSummaryChanged: textOf() !== key.before });
  key = undefined;
};
new MutationObserver(() => {
  if (!key || key.isDrawn) return;
  key.isDrawn = true;
  requestAnimationFrame(() => afterFrame.port2.postMessage(undefined));
}).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
