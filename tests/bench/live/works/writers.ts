/** One plan and a number of writers, each with five edits a second. */
import { spread } from "../../timing.ts";
import { writerOf, writes } from "../edits.ts";
import { steadily, until, wait } from "../pace.ts";
import { planKey } from "../plans.ts";
import { RawPage } from "../raw-page.ts";
import { Watch } from "../watch.ts";
import { type Stage, shareOf, work } from "../work.ts";

const EDITS_A_SECOND = 5;
/** Warms the server up, at a faster pace. */
const WARM_UP_S = 4;
const WARM_UP_FASTER = 5;
/** A shorter run, since three sizes take as long as one evening. */
const SHARE = 1 / 3;

async function join(stage: Stage, count: number) {
  const edits = (stage.seconds * SHARE + WARM_UP_S * WARM_UP_FASTER + 1) * EDITS_A_SECOND;
  const made = Array.from({ length: count }, () => writerOf(stage.base, edits, writes));
  const writers: { page: RawPage; writer: (typeof made)[number]; frames: Uint8Array[] }[] = [];
  for (const [person, writer] of made.entries()) {
    const page = await RawPage.open(stage.door, { key: planKey(0), person, holds: stage.base });
    writers.push({ page, writer, frames: writer.edits.map(({ update }) => page.framed(update)) });
  }
  return writers;
}

export const writersOf = (count: number) =>
  work({
    name: `writers-${count}`,
    label: `One plan, ${count} writers, ${EDITS_A_SECOND} edits a second each`,
    needs: () => ({ plans: 1, people: count }),
    async run(stage) {
      const writers = await join(stage, count);
      const pages = writers.map(({ page }) => page);
      const watch = new Watch(pages);
      let turn = 0;
      const next = () => {
        const { page, writer, frames } = writers[turn % count] ?? {};
        const n = Math.floor(turn++ / count);
        const [edit, frame] = [writer?.edits[n], frames?.[n]];
        if (page && writer && edit && frame) watch.send(page, pages, writer, edit, frame);
      };
      const warm = steadily(count * EDITS_A_SECOND * WARM_UP_FASTER, next);
      await wait(WARM_UP_S);
      warm();
      const end = steadily(count * EDITS_A_SECOND, next);
      await wait(1);
      watch.latencies = [];
      const seconds = stage.seconds * SHARE;
      const before = await stage.cost("cost");
      await wait(seconds);
      const { p50, p99 } = spread(watch.latencies);
      const cpu = shareOf(before, await stage.cost("cost"), seconds);
      end();
      await until("everybody has everything", () => watch.missing === 0);
      return { p50, p99, cpu: cpu * 100 };
    },
    measures: [
      { key: "p50", label: "edit to others, p50, ms" },
      { key: "p99", label: "edit to others, p99, ms", target: { kind: "ratio", value: 1.25 } },
      { key: "cpu", label: "server's processor, %" },
    ],
  });
