/** The pages of the evening, with nobody writing. */
import { wait } from "../pace.ts";
import { shareOf, work } from "../work.ts";
import { countOthers, meanOf, needsOf, openAll } from "./many-plans.ts";

export const idle = work({
  name: "idle",
  label: "The evening's pages, and nobody writes",
  needs: needsOf,
  async run(stage) {
    const others = countOthers((await openAll(stage)).flat());
    await wait(4);
    others.take();
    const before = await stage.cost("cost");
    await wait(stage.seconds);
    const cpu = shareOf(before, await stage.cost("cost"), stage.seconds);
    const heard = others.take().map((bytes) => bytes / stage.seconds);
    return { cpu: cpu * 100, heard: meanOf(heard) };
  },
  measures: [
    { key: "cpu", label: "server's processor, %" },
    { key: "heard", label: "heard, B/s a page", target: { kind: "most", value: 1000 } },
  ],
});
