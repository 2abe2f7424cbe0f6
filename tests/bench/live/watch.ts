/** How long an edit takes from its writer to every other page of the plan. */
import type { Edit, Writer } from "./edits.ts";
import type { RawPage } from "./raw-page.ts";

interface Sent {
  readonly clock: number;
  readonly at: number;
}

export class Watch {
  /** ms, one for every edit and page that it reached. */
  latencies: number[] = [];
  private readonly awaited = new Map<RawPage, Map<number, Sent[]>>();

  constructor(pages: readonly RawPage[]) {
    for (const page of pages) {
      const sent = new Map<number, Sent[]>();
      this.awaited.set(page, sent);
      page.ears.heard = (known) => this.heard(sent, known);
    }
  }

  /** Sends one edit and expects it on every other page of the plan. */
  send(from: RawPage, to: readonly RawPage[], { clientId }: Writer, edit: Edit, frame: Uint8Array): void {
    const sent = { clock: edit.clock, at: performance.now() };
    for (const page of to) if (page !== from) this.listOf(page, clientId).push(sent);
    from.sendFramed(frame);
  }

  /** Edits that are missing somewhere. */
  get missing(): number {
    const lists = [...this.awaited.values()].flatMap((bySender) => [...bySender.values()]);
    return lists.reduce((sum, list) => sum + list.length, 0);
  }

  private listOf(page: RawPage, clientId: number): Sent[] {
    const bySender = this.awaited.get(page);
    if (!bySender) throw new Error("nobody watches that page");
    const found = bySender.get(clientId) ?? [];
    bySender.set(clientId, found);
    return found;
  }

  private heard(sent: ReadonlyMap<number, Sent[]>, known: ReadonlyMap<number, number>): void {
    const now = performance.now();
    for (const [clientId, clock] of known) {
      const list = sent.get(clientId);
      if (!list) continue;
      while (list[0] && list[0].clock <= clock) {
        this.latencies.push(now - list[0].at);
        list.shift();
      }
    }
  }
}
