/** A thousand pages over two hundred plans, one time changed a second in each, each page of a plan in turn. */
import { spread } from "../../timing.ts";
import { changesTimes, writerOf } from "../edits.ts";
import { steadily, wait } from "../pace.ts";
import type { RawPage } from "../raw-page.ts";
import { Watch } from "../watch.ts";
import { type Stage, shareOf, work } from "../work.ts";
import { countOthers, meanOf, needsOf, openAll } from "./many-plans.ts";

const WARM_UP_S = 4;

/** One change per plan and second, spread over the second. Returns the function that stops it. */
function play(stage: Stage, plans: readonly (readonly RawPage[])[], watch: Watch): () => void {
  const each = Math.ceil((stage.seconds + WARM_UP_S) / stage.pages) + 2;
  const writers = plans.map((pages, plan) =>
    pages.map((page, n) => {
      const writer = writerOf(stage.base, each, changesTimes, plan + n * 7);
      return { page, writer, frames: writer.edits.map(({ update }) => page.framed(update)) };
    }),
  );
  return steadily(plans.length, (turn) => {
    const second = Math.floor(turn / plans.length);
    const { page, writer, frames } = writers[turn % plans.length]?.[second % stage.pages] ?? {};
    const n = Math.floor(second / stage.pages);
    const [edit, frame] = [writer?.edits[n], frames?.[n]];
    if (page && writer && edit && frame) watch.send(page, plans[turn % plans.length] ?? [], writer, edit, frame);
  });
}

export const evening = work({
  name: "evening",
  label: "An evening: 1 change of a time a second in every plan",
  needs: needsOf,
  async run(stage) {
    const plans = await openAll(stage);
    const pages = plans.flat();
    const watch = new Watch(pages);
    const others = countOthers(pages);
    const end = play(stage, plans, watch);
    await wait(WARM_UP_S);
    const before = await stage.cost("cost");
    watch.latencies = [];
    others.take();
    await wait(stage.seconds);
    const { p50, p99 } = spread(watch.latencies);
    const beyond = others.take().map((bytes) => bytes / stage.seconds);
    const cpu = shareOf(before, await stage.cost("cost"), stage.seconds);
    end();
    await wait(0.5);
    const { used } = await stage.cost("used");
    return {
      ...{ p50, p99, cpu: cpu * 100, beyond: meanOf(beyond), most: Math.max(...beyond) },
      ...{ missing: watch.missing, used: used / 1024 / 1024 },
    };
  },
  measures: [
    { key: "p50", label: "edit to others, p50, ms", target: { kind: "ratio", value: 2 } },
    { key: "p99", label: "edit to others, p99, ms", target: { kind: "ratio", value: 5 } },
    { key: "cpu", label: "server's processor, %", target: { kind: "most", value: 40 } },
    { key: "beyond", label: "beyond the edits, B/s a page", target: { kind: "most", value: 1000 } },
    { key: "most", label: "the same, the page with most" },
    { key: "missing", label: "edits not arrived", target: { kind: "most", value: 0 } },
    { key: "used", label: "memory in use, MB" },
  ],
});
