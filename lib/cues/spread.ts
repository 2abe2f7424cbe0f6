/**
 * Spreads lines over their time: in a given order and within their windows, so that the longest silence is as short as it can
 * be, then the next longest, and so on.
 *
 * Without the lines themselves a silence is the step from one line to the next, and the windows are gates that a path passes
 * one after the other. The shortest path through the gates (the taut string; Barlow and others, Statistical inference under
 * order restrictions, 1972, from memory) has the most even steps that the gates allow. Rounded down to whole tenths, no step
 * grows beyond the next whole tenth, so the longest silence stays the shortest in tenths too.
 */

/** A line to be said; its begin lies within the gate. Tenths. */
export interface LineGate {
  readonly length: number;
  readonly earliest: number;
  readonly latest: number;
}

/** When each line begins if all are said in order between `from` and `to`. The gates must leave a way through. */
export function evenBegins(gates: readonly LineGate[], from: number, to: number): number[] {
  const talked: number[] = [];
  let talk = 0;
  for (const { length } of gates) {
    talked.push(talk);
    talk += length;
  }
  const lows = gates.map(({ earliest }, n) => earliest - (talked[n] ?? 0));
  const highs = gates.map(({ latest }, n) => latest - (talked[n] ?? 0));
  const path = tautPath(rising([from, ...lows, to - talk]), risingBack([from, ...highs, to - talk]));
  return gates.map((_, n) => Math.floor((path[n + 1] ?? from) + 1e-9) + (talked[n] ?? 0));
}

/** A silence is never negative, so a gate is no lower than the one before it and no higher than the one after it. */
function rising(lows: readonly number[]): number[] {
  let most = Number.NEGATIVE_INFINITY;
  return lows.map((low) => {
    most = Math.max(most, low);
    return most;
  });
}
function risingBack(highs: readonly number[]): number[] {
  let least = Number.POSITIVE_INFINITY;
  const back = [...highs].reverse().map((high) => {
    least = Math.min(least, high);
    return least;
  });
  return back.reverse();
}

/** The shortest path through gates one step apart. The first and the last gate are points. */
function tautPath(lows: readonly number[], highs: readonly number[]): number[] {
  const path = [lows[0] ?? 0];
  while (path.length < lows.length) {
    const { bend, slope } = nextBend(lows, highs, path.length - 1, path.at(-1) ?? 0);
    const begin = path.length - 1;
    const height = path[begin] ?? 0;
    for (let n = begin + 1; n <= bend; n++) path.push(height + slope * (n - begin));
  }
  return path;
}

/** How far the path runs straight from one gate, and its slope: until what is seen through the gates closes. */
function nextBend(lows: readonly number[], highs: readonly number[], at: number, height: number) {
  let [steepest, flattest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [atHigh, atLow] = [at, at];
  for (let n = at + 1; n < lows.length; n++) {
    const low = ((lows[n] ?? 0) - height) / (n - at);
    const high = ((highs[n] ?? 0) - height) / (n - at);
    if (low > steepest) return { bend: atHigh, slope: steepest };
    if (high < flattest) return { bend: atLow, slope: flattest };
    if (high <= steepest) [steepest, atHigh] = [high, n];
    if (low >= flattest) [flattest, atLow] = [low, n];
  }
  return { bend: atLow, slope: flattest };
}
