/**
 * A large studio's month with three people who each make one edit a second: how long an edit takes until it has reached another's
 * page, and until that page has worked out everything its screen shows.
 */
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import type * as Y from "yjs";
import { changeSlot } from "#lib/programme/write.ts";
import { quantile } from "../../timing.ts";
import { type Writer, writerOf } from "../edits.ts";
import type { PageAsked, PageDone } from "../month-page.ts";
import { liveMonth, monthKey } from "../months.ts";
import { steadily, until, wait } from "../pace.ts";
import { RawPage } from "../raw-page.ts";
import { Watch } from "../watch.ts";
import { type Stage, shareOf, work } from "../work.ts";

const WRITERS = 3;
const EDITS_A_SECOND = 1;
const WARM_UP_S = 5;

/** Another plan, another coach, another time, in one class after another. */
function editsMonth(ids: readonly string[]) {
  return (doc: Y.Doc, turn: number): void => {
    const id = ids[(doc.clientID + turn * 7) % ids.length] ?? "";
    const by = [
      { plan: `plan-${(turn * 5) % 60}` },
      { coach: `coach-${(turn * 5) % 12}` },
      { start: `${String(6 + (turn % 14)).padStart(2, "0")}:10` },
    ][turn % 3];
    changeSlot({ doc, origin: "bench" }, id, by ?? {});
  };
}

/** A page that works out what it hears on a thread of its own, as another's machine does. */
class Screen {
  /** ms from an edit's sending. */
  latencies: number[] = [];
  took: number[] = [];
  private readonly worker: Worker;
  private readonly sent = new Map<number, { clock: number; at: number }[]>();
  private isOpen = false;

  constructor(page: RawPage, asked: PageAsked) {
    this.worker = new Worker(join(import.meta.dirname, "month-page.js"), { workerData: asked });
    this.worker.on("message", ({ known, took }: PageDone) => {
      if (this.isOpen) this.took.push(took);
      this.isOpen = true;
      for (const [client, clock] of known) this.done(client, clock);
    });
    page.ears.update = (body) => this.worker.postMessage(body);
  }

  get ready(): boolean {
    return this.isOpen;
  }

  expect(client: number, clock: number): void {
    this.sent.set(client, [...(this.sent.get(client) ?? []), { clock, at: performance.now() }]);
  }

  end(): void {
    void this.worker.terminate();
  }

  private done(client: number, clock: number): void {
    const list = this.sent.get(client) ?? [];
    while (list[0] && list[0].clock <= clock) this.latencies.push(performance.now() - (list.shift()?.at ?? 0));
  }
}

interface Writing {
  readonly writer: Writer;
  readonly page: RawPage;
  readonly frames: readonly Uint8Array[];
  readonly screen: Screen;
}

async function enter(stage: Stage): Promise<Writing[]> {
  const now = Date.now();
  const ids = liveMonth(now).slots.map(({ id }) => id);
  const writers: Writing[] = [];
  for (let person = 0; person < WRITERS; person++) {
    const count = Math.ceil((stage.seconds + WARM_UP_S + 2) * EDITS_A_SECOND);
    const writer = writerOf(stage.month, count, editsMonth(ids), person * 20);
    const page = await RawPage.open(stage.door, { key: monthKey(now), month: true, person, holds: stage.month });
    const frames = writer.edits.map(({ update }) => page.framed(update));
    writers.push({ writer, page, frames, screen: new Screen(page, { base: stage.month, now }) });
  }
  await until("every page has opened the month", () => writers.every(({ screen }) => screen.ready));
  return writers;
}

const sorted = (all: readonly number[]): Float64Array => Float64Array.from(all).sort();

export const monthScreen = work({
  name: "month-screen",
  label: `One month, 12 coaches, 400 classes, 60 plans, ${WRITERS} writers, one edit a second each`,
  needs: () => ({ plans: 1, people: WRITERS }),
  async run(stage) {
    const writers = await enter(stage);
    const pages = writers.map(({ page }) => page);
    const screens = writers.map(({ screen }) => screen);
    const watch = new Watch(pages);
    const next = (turn: number) => {
      const { page, writer, frames, screen } = writers[turn % WRITERS] ?? {};
      const n = Math.floor(turn / WRITERS);
      const [edit, frame] = [writer?.edits[n], frames?.[n]];
      if (!page || !writer || !edit || !frame) return;
      for (const other of screens) if (other !== screen) other.expect(writer.clientId, edit.clock);
      watch.send(page, pages, writer, edit, frame);
    };
    const end = steadily(WRITERS * EDITS_A_SECOND, next);
    await wait(WARM_UP_S);
    watch.latencies = [];
    for (const screen of screens) [screen.latencies, screen.took] = [[], []];
    const before = await stage.cost("cost");
    await wait(stage.seconds);
    const cpu = shareOf(before, await stage.cost("cost"), stage.seconds);
    end();
    await until("everybody has everything", () => watch.missing === 0);
    const heard = sorted(watch.latencies);
    const shown = sorted(screens.flatMap(({ latencies }) => latencies));
    const took = sorted(screens.flatMap((screen) => screen.took));
    for (const screen of screens) screen.end();
    return {
      ...{ p50: quantile(heard, 0.5), p95: quantile(heard, 0.95), p99: quantile(heard, 0.99) },
      ...{ shown50: quantile(shown, 0.5), shown95: quantile(shown, 0.95), shown99: quantile(shown, 0.99) },
      ...{ took50: quantile(took, 0.5), took95: quantile(took, 0.95), cpu: cpu * 100 },
    };
  },
  measures: [
    { key: "p50", label: "edit received by others, p50, ms" },
    { key: "p95", label: "edit received by others, p95, ms" },
    { key: "p99", label: "edit received by others, p99, ms" },
    { key: "shown50", label: "edit worked out there, p50, ms" },
    { key: "shown95", label: "edit worked out there, p95, ms", target: { kind: "most", value: 100 } },
    { key: "shown99", label: "edit worked out there, p99, ms" },
    { key: "took50", label: "of that working out, p50, ms" },
    { key: "took95", label: "of that working out, p95, ms" },
    { key: "cpu", label: "server's processor, %" },
  ],
});
