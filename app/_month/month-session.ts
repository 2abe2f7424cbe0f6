/**
 * One open month outside React: the shared document, its socket, its copy on this device, and the server's news.
 * Components read frozen snapshots and write through `act`. One session a mounted page; React's double mounting while
 * developing makes two in a row, each with its own document and an end.
 */
import { IndexeddbPersistence } from "y-indexeddb";
import type { Awareness } from "y-protocols/awareness";
import * as Y from "yjs";
import { type DeviceCopy, watchDeviceCopy } from "#lib/client/device-copy.ts";
import { connectDoc, type DocConnection, saveStatus } from "#lib/client/provider.ts";
import { docVersion } from "#lib/doc/layout.ts";
import type { Writer } from "#lib/doc/write.ts";
import { MONTH_DOC_VERSION } from "#lib/programme/layout.ts";
import { type MonthProblem, monthProblems } from "#lib/programme/problems.ts";
import { readDeletedSlots, readMonth } from "#lib/programme/read.ts";
import type { News, PlanSummary, PlansKnown, Present } from "#lib/protocol/messages.ts";
import type { MonthPageProps, MonthSnapshot } from "./month-types.ts";

export class MonthSession {
  readonly doc = new Y.Doc();
  readonly writer: Writer = { doc: this.doc, origin: { of: "this page" } };
  /** Who is here, their names the server's. */
  readonly awareness: Awareness;
  private readonly link: DocConnection;
  private readonly store: IndexeddbPersistence;
  private readonly copy: DeviceCopy;
  private readonly listeners = new Set<() => void>();
  private readonly plans: Map<string, PlanSummary>;
  /** Plans of slots that this person may not read. */
  private hidden: readonly string[];
  private writes: boolean;
  private present: readonly Present[] = [];
  private ready = false;
  private ended = false;
  private snapshot: MonthSnapshot;

  constructor(props: MonthPageProps) {
    this.plans = new Map([...props.plans, ...props.used.plans].map((plan) => [plan.id, plan]));
    this.hidden = props.used.hidden;
    this.writes = props.writes;
    this.store = new IndexeddbPersistence(copyName(props), this.doc);
    this.copy = watchDeviceCopy(this.store, this.doc, this.touch);
    this.store.on("synced", this.touch);
    this.link = connectDoc({
      origin: location.origin.replace(/^http/, "ws"),
      name: { kind: "month", key: props.month },
      doc: this.doc,
      docVersion: MONTH_DOC_VERSION,
      generation: props.generation,
      userId: props.me.id,
      awareness: { user: props.me },
      onNews: (news) => this.takeNews(news),
      onState: this.touch,
    });
    this.awareness = this.link.awareness;
    this.doc.on("update", this.touch);
    this.snapshot = this.build();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  readonly getSnapshot = (): MonthSnapshot => this.snapshot;

  /** Runs one act. Without the right to write, or before the month was read: nothing. */
  act(change: (writer: Writer) => void): void {
    if (this.canWrite) change(this.writer);
  }

  get canWrite(): boolean {
    return this.ready && this.writes;
  }

  /** Connects again after a final close, for instance once the person has signed in again. */
  reconnect(): void {
    this.link.reconnect();
  }

  end(): void {
    this.ended = true;
    this.listeners.clear();
    this.doc.off("update", this.touch);
    this.link.stop();
    void this.store.destroy();
    this.doc.destroy();
  }

  private readonly touch = (): void => {
    if (this.ended) return;
    if (docVersion(this.doc) > 0) this.ready = true;
    this.snapshot = this.build();
    for (const listener of this.listeners) listener();
  };

  private takeNews(news: News): void {
    if (news.t === "rights") this.writes = news.writes;
    else if (news.t === "present") this.present = news.people;
    else if (news.t === "plans") this.takePlans(news);
    else return;
    this.touch();
  }

  private takePlans({ plans, hidden }: PlansKnown): void {
    for (const plan of plans) this.plans.set(plan.id, plan);
    for (const id of hidden) this.plans.delete(id);
    this.hidden = hidden;
  }

  private build(): MonthSnapshot {
    const { slots } = readMonth(this.doc);
    const today = localDate(new Date());
    return Object.freeze({
      ready: this.ready,
      slots,
      deleted: readDeletedSlots(this.doc),
      problems: bySlot(monthProblems(slots, { plans: [...this.plans.values()], hidden: this.hidden }, today)),
      plans: new Map(this.plans),
      writes: this.writes && this.ready,
      present: this.present,
      save: saveStatus(this.link.state, this.ready),
      copy: this.copy.state,
      today,
    });
  }
}

function bySlot(problems: readonly MonthProblem[]): Map<string, MonthProblem[]> {
  const found = new Map<string, MonthProblem[]>();
  for (const problem of problems) {
    for (const id of problem.slots) found.set(id, [...(found.get(id) ?? []), problem]);
  }
  return found;
}

function localDate(now: Date): string {
  const two = (n: number) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const copyName = (p: MonthPageProps) => `springline/month/${p.month}/${p.generation}/${p.me.id}`;
