/**
 * Five hundred plans opened one after another and kept open. A plan's memory depends on its length, so it is compared
 * with the stock server's, which holds only the same document.
 */
import { wait } from "../pace.ts";
import { planKey } from "../plans.ts";
import { RawPage } from "../raw-page.ts";
import { peopleFor, work } from "../work.ts";

const PLANS = 500;
/** Time for a server to unload a plan that nobody has open, and to check or store it. */
const LETS_GO_S = 15;

export const open = work({
  name: "open",
  label: `${PLANS} plans opened one after another`,
  needs: () => ({ plans: PLANS, people: peopleFor(PLANS) }),
  async run({ door, base, cost }) {
    const opened = (plan: number, holds?: Uint8Array) =>
      RawPage.open(door, { key: planKey(plan), person: plan, ...(holds ? { holds } : {}) });
    // The first one pays for one-time compilation and preparation.
    await opened(PLANS, base);
    // The stock server stores nothing, so the first page brings the plan. The others open it again, as usual.
    const brings = door.kind === "stock" ? base : undefined;
    if (!brings) {
      for (let plan = 0; plan < PLANS; plan++) (await opened(plan, base)).end();
      await wait(LETS_GO_S);
    }
    const before = await cost("used");
    const from = performance.now();
    for (let plan = 0; plan < PLANS; plan++) await opened(plan, brings);
    const seconds = (performance.now() - from) / 1000;
    await wait(4);
    const after = await cost("used");
    return { seconds, used: (after.used - before.used) / PLANS / 1024, rss: (after.rss - before.rss) / PLANS / 1024 };
  },
  measures: [
    { key: "seconds", label: "all of them, s", target: { kind: "ratio", value: 2 } },
    { key: "used", label: "memory in use a plan, KiB", target: { kind: "ratio", value: 1.13 } },
    { key: "rss", label: "the process's memory a plan, KiB" },
  ],
});
