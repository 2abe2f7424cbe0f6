/** The fewest items that have to move to turn one order into another. */

/**
 * The ids in both lists that have to move: all but the longest subsequence that kept its order. Ids in only one list are
 * ignored.
 */
export function movedIds(before: readonly string[], after: readonly string[]): Set<string> {
  const place = new Map(before.map((id, i) => [id, i]));
  const stayed = after.flatMap((id) => {
    const old = place.get(id);
    return old === undefined ? [] : [{ id, old }];
  });
  const best: { length: number; previous: number }[] = [];
  stayed.forEach(({ old }, i) => {
    let longest = { length: 1, previous: -1 };
    for (let j = 0; j < i; j++) {
      const length = (best[j]?.length ?? 0) + 1;
      if ((stayed[j]?.old ?? old) < old && length > longest.length) longest = { length, previous: j };
    }
    best.push(longest);
  });
  const moved = new Set(stayed.map((s) => s.id));
  let at = best.reduce((top, b, i) => (b.length > (best[top]?.length ?? 0) ? i : top), best.length - 1);
  for (let entry = best[at]; entry; entry = best[at]) {
    moved.delete(stayed[at]?.id ?? "");
    at = entry.previous;
  }
  return moved;
}
