const warmed = new WeakSet();

/** Seconds of one call: the second batch that fills 20 ms; the first one is the warm-up. */
export function perCall(call) {
  let calls = 1;
  for (;;) {
    const { milliseconds, value } = batch(call, calls);
    if (milliseconds > 20 && warm(call)) return { seconds: milliseconds / 1000 / calls, value };
    if (milliseconds <= 20) calls = Math.ceil(calls * Math.min(10, 30 / Math.max(milliseconds, 0.1)));
  }
}

function batch(call, calls) {
  let [value, total] = [0, 0];
  const start = performance.now();
  for (let i = 0; i < calls; i++) {
    value = call();
    total += value;
  }
  const milliseconds = performance.now() - start;
  // The total is used, so that no call is optimised away.
  if (Number.isNaN(total)) throw new Error("bench: a call gave NaN");
  return { milliseconds, value };
}

/** True from the second time on that a call is asked about. */
function warm(call) {
  if (warmed.has(call)) return true;
  warmed.add(call);
  return false;
}
