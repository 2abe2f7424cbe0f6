/** A room's updates: those waiting to be committed, and those committed and waiting to be sent on. */

import { mergeUpdates } from "#server/doc-log/updates.ts";
import type { PageConnection } from "./page-connection.ts";

export interface QueuedUpdate {
  readonly bytes: Uint8Array;
  readonly actorId: string;
  /** The page it came from, if it came from a single one. */
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

  /** What waits to be committed: one update per author, so that one person's typing within a turn is merged once. */
  together(): readonly QueuedUpdate[] {
    if (this.queue.length > 1) this.queue = byActor(this.queue);
    return this.queue;
  }

  /** The whole queue has just been committed. Returns it. */
  markStored(): readonly QueuedUpdate[] {
    const { queue } = this;
    this.stored.push(...queue);
    this.queue = [];
    return queue;
  }

  /** What is to be sent on, as a single update. */
  takeStored(): { readonly bytes: Uint8Array; readonly from: PageConnection | null } | undefined {
    const { stored } = this;
    this.stored = [];
    return stored.length > 0 ? { bytes: mergeUpdates(stored.map(bytesOf)), from: soleSender(stored) } : undefined;
  }
}

const bytesOf = ({ bytes }: QueuedUpdate): Uint8Array => bytes;

/** The connection that all updates came from, if it is one: it already has them. */
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
