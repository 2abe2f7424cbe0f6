/**
 * Who is where in one room: the presence states of its pages. The server adds the name it knows, accepts states only for a
 * connection's own client ids, and keeps the clocks, so that somebody who reconnects is seen at once although their page's
 * clock has not advanced (y-websocket issue 122). There is no timer: a state disappears with its socket.
 */
import * as decoding from "lib0/decoding";
import { awarenessFrame, type Frame, type PresenceEntry } from "./frames.ts";
import type { SessionInfo } from "./host.ts";
import { LIMITS } from "./limits.ts";

/** What presence needs of a connection. */
export interface PresenceOwner {
  readonly session: SessionInfo;
}
interface Held {
  readonly owner: PresenceOwner;
  /** JSON, with the name that the server knows. */
  readonly state: string;
}
/** The last clock that was sent for a client id; kept after it has gone. */
interface Clock {
  readonly clock: number;
  readonly userId: string;
}
interface Claim {
  readonly clientId: number;
  readonly clock: number;
  readonly state: string;
}

const MAX_CLOCKS = 1000;
const MAX_CLAIMS = 1000;

export class Presence {
  private readonly held = new Map<number, Held>();
  private readonly clocks = new Map<number, Clock>();
  private readonly changed = new Set<number>();
  private readonly ownerOf: (clientId: number) => string | undefined;

  /** `ownerOf`: the person whose page a client id is, if that is known for good. */
  constructor(ownerOf: (clientId: number) => string | undefined = () => undefined) {
    this.ownerOf = ownerOf;
  }

  get hasNews(): boolean {
    return this.changed.size > 0;
  }

  /** Takes an awareness update of `owner`'s page. Returns how many of its states were refused. Throws when malformed. */
  take(owner: PresenceOwner, update: Uint8Array): number {
    let refused = 0;
    for (const claim of readClaims(update)) {
      const verdict = this.judge(owner, claim);
      if (verdict === "refused") refused++;
      else if (verdict === "taken") this.put(owner, claim);
    }
    return refused;
  }

  /** Removes all states of a connection. */
  drop(owner: PresenceOwner): void {
    for (const [clientId, held] of this.held) if (held.owner === owner) this.remove(clientId);
  }

  /** The person whose page a client id is, as far as it has been present here, also after it has gone. */
  userOf(clientId: number): string | undefined {
    return this.held.get(clientId)?.owner.session.userId ?? this.clocks.get(clientId)?.userId;
  }

  /** All states, for a page that has just joined. Undefined when there are none. */
  everybody(): Frame | undefined {
    return this.held.size === 0 ? undefined : awarenessFrame([...this.held.keys()].map((id) => this.entry(id)));
  }

  /**
   * What has changed since the last call, as frames. A page never receives its own state: the server's older one would
   * replace its newer one.
   */
  takeNews(): (owner: PresenceOwner) => Frame | undefined {
    const ids = [...this.changed];
    this.changed.clear();
    const all = awarenessFrame(ids.map((id) => this.entry(id)));
    return (owner) => {
      const others = ids.filter((id) => this.held.get(id)?.owner !== owner);
      if (others.length === ids.length) return all;
      return others.length === 0 ? undefined : awarenessFrame(others.map((id) => this.entry(id)));
    };
  }

  private judge(owner: PresenceOwner, claim: Claim): "taken" | "echo" | "refused" {
    const holder = this.held.get(claim.clientId)?.owner;
    const known = this.clocks.get(claim.clientId);
    if (claim.state === "null") return holder === owner ? "taken" : "echo";
    if ((this.ownerOf(claim.clientId) ?? owner.session.userId) !== owner.session.userId)
      return this.judgeForeign(claim);
    if (holder === owner || (!holder && !known)) return this.mayHold(owner, claim) ? "taken" : "refused";
    // Stock pages send back whatever they receive: a state with an old clock is ignored.
    const newer = claim.clock > (known?.clock ?? -1);
    const sameUser = known?.userId === owner.session.userId;
    if (sameUser && (newer || this.idsOf(owner) === 0)) return this.mayHold(owner, claim) ? "taken" : "refused";
    return newer ? "refused" : "echo";
  }

  /** Stock pages send back other pages' states; only a newer clock pretends to be that page. */
  private judgeForeign(claim: Claim): "echo" | "refused" {
    return claim.clock > (this.clocks.get(claim.clientId)?.clock ?? -1) ? "refused" : "echo";
  }

  private mayHold(owner: PresenceOwner, claim: Claim): boolean {
    if (claim.state.length > LIMITS.presenceBytes || stamp(claim.state, owner.session) === undefined) return false;
    return this.held.get(claim.clientId)?.owner === owner || this.idsOf(owner) < LIMITS.presenceIds;
  }

  private put(owner: PresenceOwner, claim: Claim): void {
    const state = claim.state === "null" ? undefined : stamp(claim.state, owner.session);
    if (state === undefined) {
      this.remove(claim.clientId);
      return;
    }
    this.held.set(claim.clientId, { owner, state });
    this.tick(claim.clientId, claim.clock, owner.session.userId);
  }

  private remove(clientId: number): void {
    const held = this.held.get(clientId);
    if (!held) return;
    this.held.delete(clientId);
    this.tick(clientId, 0, held.owner.session.userId);
  }

  /** The next clock: later than both the page's own and the last one that was sent. */
  private tick(clientId: number, claimed: number, userId: string): void {
    const clock = Math.max(claimed, (this.clocks.get(clientId)?.clock ?? 0) + 1);
    this.clocks.delete(clientId);
    this.clocks.set(clientId, { clock, userId });
    this.changed.add(clientId);
    for (const old of this.clocks.keys()) {
      if (this.clocks.size <= MAX_CLOCKS) break;
      if (!this.held.has(old) && !this.changed.has(old)) this.clocks.delete(old);
    }
  }

  private idsOf(owner: PresenceOwner): number {
    let count = 0;
    for (const held of this.held.values()) if (held.owner === owner) count++;
    return count;
  }

  private entry(clientId: number): PresenceEntry {
    const clock = this.clocks.get(clientId)?.clock ?? 0;
    return { clientId, clock, state: this.held.get(clientId)?.state ?? "null" };
  }
}

function readClaims(update: Uint8Array): Claim[] {
  const decoder = decoding.createDecoder(update);
  const count = decoding.readVarUint(decoder);
  if (count > MAX_CLAIMS) throw new RangeError("too many presences in one message");
  return Array.from({ length: count }, () => ({
    clientId: decoding.readVarUint(decoder),
    clock: decoding.readVarUint(decoder),
    state: decoding.readVarString(decoder),
  }));
}

/** The state with the identity that the server knows; undefined when it is not a JSON object. */
function stamp(state: string, session: SessionInfo): string | undefined {
  try {
    const value: unknown = JSON.parse(state);
    if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
    return JSON.stringify({ ...value, user: { id: session.userId, name: session.name } });
  } catch {
    // Not JSON: the caller refuses and counts it.
    return undefined;
  }
}
