/** Removes waits that others imply: with a before b and b before c, that c waits for a adds nothing. */

/**
 * For each unit, the units it waits for, without those implied by others. Two neighbouring stretches may be swapped exactly
 * when no remaining wait goes from one to the other. Waits in a circle are returned unchanged.
 */
export function transitiveReduction(waits: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const order = earlierFirst(waits);
  if (order.length < waits.length) return waits;
  const rank = new Int32Array(waits.length);
  for (const [r, unit] of order.entries()) rank[unit] = r;
  const words = Math.ceil(waits.length / 32);
  const above = new Int32Array(words * waits.length);
  const left: number[][] = waits.map(() => []);
  for (const unit of order) {
    // Latest first, so that everything an earlier one implies is already known.
    for (const other of [...(waits[unit] ?? [])].sort((a, b) => (rank[b] ?? 0) - (rank[a] ?? 0))) {
      const word = unit * words + (other >> 5);
      if ((above[word] ?? 0) & (1 << (other & 31))) continue;
      left[unit]?.push(other);
      for (let w = 0; w < words; w++)
        above[unit * words + w] = (above[unit * words + w] ?? 0) | (above[other * words + w] ?? 0);
      above[word] = (above[word] ?? 0) | (1 << (other & 31));
    }
  }
  return left;
}

/** Units sorted so that each follows those it waits for; those in a circle, or waiting for one, are left out. */
function earlierFirst(waits: readonly (readonly number[])[]): number[] {
  const followers: number[][] = waits.map(() => []);
  const open = waits.map((others) => others.length);
  for (const [unit, others] of waits.entries()) for (const other of others) followers[other]?.push(unit);
  const order = waits.flatMap((others, unit) => (others.length === 0 ? [unit] : []));
  for (let i = 0; i < order.length; i++) {
    for (const unit of followers[order[i] ?? 0] ?? []) {
      open[unit] = (open[unit] ?? 0) - 1;
      if (open[unit] === 0) order.push(unit);
    }
  }
  return order;
}
