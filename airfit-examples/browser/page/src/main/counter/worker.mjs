// Runs in a worker, behind the library: answers one question at a time.
/* global airfit */

function answered({ call, args }) {
  try {
    return { answer: airfit[call](...args) };
  } catch (e) {
    const { name, message, file, field, accepted } = e;
    return { refused: { name: String(name), message: String(message), file, field, accepted } };
  }
}

self.onmessage = ({ data: { id, calls } }) => {
  const started = performance.now();
  const answers = calls.map(answered);
  self.postMessage({ id, answers, ms: performance.now() - started });
};
self.postMessage({ id: 0, ready: Object.keys(airfit) });
