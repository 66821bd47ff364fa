// A worker draws nothing: left to itself the runtime would wait there for a frame of the page before each step, and
// stand still while the page is hidden. To be imported before it.
Object.defineProperty(globalThis, "requestAnimationFrame", { value: undefined });
