// Runs in a worker, behind the library: answers one question at a time.
/* global airfit */

function answered({ call, args }) {
  try {
    return { answer: airfit[call](...args) };
  } catch (e) {
    return { refused: { name: String(e.name), message: String(e.message), field: e.field, accepted: e.accepted } };
  }
}

self.onmessage = ({ data: { id, calls } }) => {
  const started = performance.now();
  const answers = calls.map(answered);
  self.postMessage({ id, answers, ms: performance.now() - started });
};
self.postMessage({ id: 0, ready: Object.keys(airfit) });
