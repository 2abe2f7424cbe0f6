/**
 * Caches a function's result for each value, for values that never change in place, such as those of a plan. The result is
 * dropped with the value.
 */
export function perValue<K extends object, T>(work: (value: K) => T): (value: K) => T {
  const known = new WeakMap<K, { readonly answer: T }>();
  return (value) => {
    let kept = known.get(value);
    if (!kept) {
      kept = { answer: work(value) };
      known.set(value, kept);
    }
    return kept.answer;
  };
}
