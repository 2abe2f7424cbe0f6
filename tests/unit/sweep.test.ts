/** Whoever has a socket open is asked about in every round, however many rooms there are. */
import { expect, test } from "vitest";
import { Sweep } from "#server/sync/sweep.ts";

test.each([0, 1, 9, 10, 11, 200, 203])("a round of %d meets each once", (count) => {
  const all = Array.from({ length: count }, (_, n) => n);
  const sweep = new Sweep<number>();
  for (let round = 0; round < 2; round++) {
    const met = Array.from({ length: Sweep.PARTS }, () => sweep.next(all)).flat();
    expect(met).toEqual(all);
  }
});
