/** A room's updates on their way: what waits for the log, and what is in the log and waits to be sent on. */

import { mergeUpdates } from "#server/doc-log/updates.ts";
import type { PageConnection } from "./page-connection.ts";

export interface QueuedUpdate {
  readonly bytes: Uint8Array;
  readonly actorId: string;
  /** The one page it came from, when it came from one. */
  readonly from: PageConnection | null;
}

export class UpdateQueue {
  private queue: QueuedUpdate[] = [];
  private stored: QueuedUpdate[] = [];

  get isEmpty(): boolean {
    return this.queue.length === 0;
  }

  push(update: QueuedUpdate): void {
    this.queue.push(update);
  }

  /** What waits for the log: one update an author, so that what one person typed within a turn is put together once. */
  together(): readonly QueuedUpdate[] {
    if (this.queue.length > 1) this.queue = byActor(this.queue);
    return this.queue;
  }

  /** The whole queue has just been committed. Gives it. */
  markStored(): readonly QueuedUpdate[] {
    const { queue } = this;
    this.stored.push(...queue);
    this.queue = [];
    return queue;
  }

  /** What is to be sent on, as one update. */
  takeStored(): { readonly bytes: Uint8Array; readonly from: PageConnection | null } | undefined {
    const { stored } = this;
    this.stored = [];
    return stored.length > 0 ? { bytes: mergeUpdates(stored.map(bytesOf)), from: soleSender(stored) } : undefined;
  }
}

const bytesOf = ({ bytes }: QueuedUpdate): Uint8Array => bytes;

/** The one connection that everything came from: it has it already. */
function soleSender(updates: readonly QueuedUpdate[]): PageConnection | null {
  const first = updates[0]?.from ?? null;
  return updates.every(({ from }) => from === first) ? first : null;
}

function byActor(queue: readonly QueuedUpdate[]): QueuedUpdate[] {
  const lists = new Map<string, QueuedUpdate[]>();
  for (const update of queue) {
    const list = lists.get(update.actorId);
    if (list) list.push(update);
    else lists.set(update.actorId, [update]);
  }
  return [...lists].map(([actorId, list]) => ({
    actorId,
    bytes: mergeUpdates(list.map(bytesOf)),
    from: soleSender(list),
  }));
}
