/** Five thousand updates of one writer in one go, as from a page that reconnects or pastes. */
import { writerOf, writes } from "../edits.ts";
import { until } from "../pace.ts";
import { planKey } from "../plans.ts";
import { RawPage } from "../raw-page.ts";
import { work } from "../work.ts";

const UPDATES = 5000;
/** Warms the server up. */
const WARM_UP = 3000;
const AT_ONCE = 100;

export const burst = work({
  name: "burst",
  label: `${UPDATES} updates in one go`,
  needs: () => ({ plans: 1, people: 2 }),
  async run({ door, base }) {
    const { clientId, edits } = writerOf(base, WARM_UP + UPDATES, writes);
    const last = edits.at(-1)?.clock ?? 0;
    const [writer, reader] = [
      await RawPage.open(door, { key: planKey(0), person: 0, holds: base }),
      await RawPage.open(door, { key: planKey(0), person: 1, holds: base }),
    ];
    const frames = edits.map(({ update }) => writer.framed(update));
    let known = 0;
    reader.ears.heard = (clocks) => {
      known = Math.max(known, clocks.get(clientId) ?? 0);
    };
    for (let n = 0; n < WARM_UP; n++) {
      writer.sendFramed(frames[n] ?? new Uint8Array());
      if (n % AT_ONCE === AT_ONCE - 1) await until("a wave is there", () => known >= (edits[n]?.clock ?? 0));
    }
    const from = performance.now();
    for (const frame of frames.slice(WARM_UP)) writer.sendFramed(frame);
    await until("everything has arrived", () => known >= last);
    const seconds = (performance.now() - from) / 1000;
    return { rate: UPDATES / seconds };
  },
  measures: [{ key: "rate", label: "arrived at another page, updates/s", target: { kind: "least", value: 15_000 } }],
});
