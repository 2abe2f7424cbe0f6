/** Five hundred plans opened one after another, and kept open. */
import { wait } from "../pace.ts";
import { planKey } from "../plans.ts";
import { RawPage } from "../raw-page.ts";
import { peopleFor, work } from "../work.ts";

const PLANS = 500;

export const open = work({
  name: "open",
  label: `${PLANS} plans opened one after another`,
  needs: () => ({ plans: PLANS, people: peopleFor(PLANS) }),
  async run({ door, base, cost }) {
    // The stock servers have no way to be given a plan: its first page brings it.
    const holds = door.kind === "own" ? undefined : base;
    // The first of all pays for what is compiled and prepared once.
    await RawPage.open(door, { key: planKey(PLANS), person: 0, ...(holds ? { holds } : {}) });
    await wait(1);
    const before = await cost("used");
    const from = performance.now();
    for (let plan = 0; plan < PLANS; plan++)
      await RawPage.open(door, { key: planKey(plan), person: plan, ...(holds ? { holds } : {}) });
    const seconds = (performance.now() - from) / 1000;
    await wait(4);
    const after = await cost("used");
    return { seconds, used: (after.used - before.used) / PLANS / 1024, rss: (after.rss - before.rss) / PLANS / 1024 };
  },
  measures: [
    { key: "seconds", label: "all of them, s", target: { kind: "ratio", value: 2 } },
    { key: "used", label: "memory in use a plan, KiB", target: { kind: "most", value: 250 } },
    { key: "rss", label: "the process's memory a plan, KiB" },
  ],
});
