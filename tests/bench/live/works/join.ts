/** A new page joins a plan with twenty thousand edits and their writers present. */
import { spread } from "../../timing.ts";
import { scatters, writerOf } from "../edits.ts";
import { until, wait } from "../pace.ts";
import { planKey } from "../plans.ts";
import { RawPage } from "../raw-page.ts";
import { work } from "../work.ts";

const WRITERS = 10;
const EDITS_EACH = 2000;
const AT_ONCE = 50;
const JOINS = 25;

export const join = work({
  name: "join",
  label: `Joining a plan with ${WRITERS * EDITS_EACH} edits behind it`,
  needs: () => ({ plans: 1, people: WRITERS + 1 }),
  async run({ door, base }) {
    const key = planKey(0);
    const writers = Array.from({ length: WRITERS }, () => writerOf(base, EDITS_EACH, scatters));
    const reader = await RawPage.open(door, { key, person: WRITERS, holds: base });
    const known = new Map<number, number>();
    reader.ears.heard = (clocks) => {
      for (const [id, clock] of clocks) known.set(id, Math.max(clock, known.get(id) ?? 0));
    };
    for (const [person, { clientId, edits }] of writers.entries()) {
      const page = await RawPage.open(door, { key, person, holds: base });
      for (const [n, { update, clock }] of edits.entries()) {
        page.sendFramed(page.framed(update));
        // In waves: nobody types two thousand letters at once, and a server may merge what it has at one moment.
        if (n % AT_ONCE === AT_ONCE - 1) await until("a wave is there", () => (known.get(clientId) ?? 0) >= clock);
      }
    }
    await wait(3);
    const times: number[] = [];
    for (let n = 0; n < JOINS; n++) {
      const from = performance.now();
      const page = await RawPage.open(door, { key, person: WRITERS });
      times.push(performance.now() - from);
      page.end();
      await wait(0.02);
    }
    const { p50, p99 } = spread(times);
    return { p50, p99 };
  },
  measures: [
    { key: "p50", label: "socket to whole plan, median, ms", target: { kind: "ratio", value: 1 } },
    { key: "p99", label: "the slowest, ms" },
  ],
});
