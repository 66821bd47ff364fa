/** Remembers the latest results of a pure function: papers repeat their numbers, and long texts must not fill the memory. */
export function remembered<Value>(most = 4000): (key: string, compute: () => Value) => Value {
  const known = new Map<string, Value>();
  return (key, compute) => {
    const found = known.get(key);
    if (found !== undefined) return found;
    const value = compute();
    if (known.size >= most) known.clear();
    known.set(key, value);
    return value;
  };
}
