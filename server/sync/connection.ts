/**
 * One page's socket in one room: reads its messages in order, checks the person's rights, and sends. What a change means
 * for the document is decided by the room.
 */
import * as decoding from "lib0/decoding";
import type { WebSocket } from "ws";
import { messageYjsSyncStep1, messageYjsSyncStep2, messageYjsUpdate } from "y-protocols/sync";
import { CLOSE, type CloseName } from "#lib/protocol/close.ts";
import { MESSAGE, type News } from "#lib/protocol/messages.ts";
import { endSocket } from "#server/sockets/close-socket.ts";
import type { FrameLane } from "./frame-scheduler.ts";
import { MURMUR_FRAME, newsFrame, step1Frame } from "./frames.ts";
import type { DocAccess, SessionInfo } from "./host.ts";
import type { Limits } from "./limits.ts";
import type { SyncMeter } from "./meter.ts";
import type { PageConnection } from "./page-connection.ts";
import type { DocumentRoom, UpdateOutcome } from "./room.ts";

/** Whose connection it is, what they may do, and the lane that its work runs in. */
export interface Holder {
  readonly session: SessionInfo;
  readonly access: DocAccess;
  readonly lane: FrameLane;
  readonly meter: SyncMeter;
}

export class Connection implements PageConnection {
  readonly session: SessionInfo;
  readonly room: DocumentRoom;
  access: DocAccess;
  counted = 0;
  private readonly ws: WebSocket;
  private readonly limits: Limits;
  private readonly lane: FrameLane;
  private readonly meter: SyncMeter;
  /** When the oldest message arrived that nobody was told of yet, by `performance.now()`. */
  private arrived: number | undefined;
  /** When the frame arrived that is being read. */
  private frameAt = 0;
  private open = true;
  private alive = true;
  /** Updates of this turn that the room has not taken yet: merged, many cost little more than one. */
  private heard: Uint8Array[] = [];
  private heardBytes = 0;
  /** Updates that came before the page's first full sync (step 2) and depend on what that brings. */
  private early: Uint8Array[] = [];
  private earlyBytes = 0;
  private offered = false;
  private strained = 0;
  private strainedSince = performance.now();

  constructor(ws: WebSocket, room: DocumentRoom, who: Holder, limits: Limits) {
    this.ws = ws;
    this.room = room;
    this.session = who.session;
    this.lane = who.lane;
    this.meter = who.meter;
    this.access = who.access;
    this.limits = limits;
    ws.on("pong", () => {
      this.alive = true;
    });
  }

  /** One frame of the page, which arrived at `at`. Whatever is wrong with it only ends this connection. */
  receive(data: Uint8Array, isBinary: boolean, at: number): void {
    if (!this.open) return;
    this.meter.received(data.byteLength);
    this.frameAt = at;
    // The answer to a ping may be queued behind other frames of the page.
    this.alive = true;
    const wrong = this.read(data, isBinary);
    if (wrong) this.close(wrong);
  }

  /** Handles a frame. Returns the close code when the connection has to end. */
  private read(data: Uint8Array, isBinary: boolean): CloseName | undefined {
    if (data.byteLength > this.limits.messageBytes) return "tooLarge";
    if (!isBinary) return "badMessage";
    try {
      return this.dispatch(decoding.createDecoder(data));
    } catch {
      // An exception that gets here means a message that could not be decoded; the room catches its own.
      return "badMessage";
    }
  }

  private dispatch(decoder: decoding.Decoder): CloseName | undefined {
    switch (decoding.readVarUint(decoder)) {
      case MESSAGE.sync:
        return this.takeSync(decoding.readVarUint(decoder), decoding.readVarUint8Array(decoder));
      case MESSAGE.awareness:
        return this.takePresence(decoding.readVarUint8Array(decoder));
      case MESSAGE.queryAwareness:
        this.room.sendEverybody(this);
        // Also when nobody is present: a page asks in order to find out whether the connection still works.
        this.murmur();
        return undefined;
      default:
        return "badMessage";
    }
  }

  private takeSync(kind: number, body: Uint8Array): CloseName | undefined {
    if (kind !== messageYjsSyncStep1) this.arrived ??= this.frameAt;
    if (kind === messageYjsUpdate) return this.takeUpdate(body);
    const wrong = this.readHeard();
    if (wrong) return wrong;
    if (kind === messageYjsSyncStep1) this.room.answer(this, body);
    else if (kind === messageYjsSyncStep2) return this.takeChange(body, true);
    else return "badMessage";
    return undefined;
  }

  private takeUpdate(update: Uint8Array): CloseName | undefined {
    if (!this.offered || !this.access.writes) return this.takeChange(update, false);
    this.heard.push(update);
    this.heardBytes += update.byteLength;
    if (this.heardBytes > this.limits.heardBytes) return this.readHeard();
    this.room.hears(this);
    return undefined;
  }

  takeHeard(): void {
    this.lane.pay(() => {
      const wrong = this.readHeard();
      if (wrong) this.close(wrong);
    });
  }

  private readHeard(): CloseName | undefined {
    const { heard } = this;
    this.heard = [];
    this.heardBytes = 0;
    const [first] = heard;
    if (heard.length === 1 && first) return this.takeChange(first, false);
    if (heard.length === 0) return undefined;
    if (this.room.applyTogether(this, heard)) this.count(heard.length);
    // One by one, so that everything before a faulty update still counts. Each is scheduled, since each may be expensive.
    else for (const update of heard) this.lane.take(() => this.takeAlone(update));
    return undefined;
  }

  private takeAlone(update: Uint8Array): void {
    if (!this.open) return;
    const wrong = this.takeChange(update, false);
    if (wrong) this.close(wrong);
  }

  private takeChange(update: Uint8Array, isOffer: boolean): CloseName | undefined {
    if (!this.access.writes) return this.takeFromReader(update);
    const result = this.room.apply(this, update);
    if (result === "malformed") return "badMessage";
    // Otherwise two pages that each hold the other's lost changes would wait for each other for ever.
    if (result === "forged" && isOffer) this.room.apply(this, this.room.ownPart(this, update));
    const refused = this.refuse(result, isOffer);
    if (refused) return refused;
    if (result === "broken") return "roomReloaded";
    if (isOffer) return result === "gap" ? "roomReloaded" : this.takeOffer();
    if (result === "applied") this.count(1);
    else return this.keepEarly(update);
    return undefined;
  }

  /** Typed while the connection was opening, on top of changes that the server does not have yet. */
  private keepEarly(update: Uint8Array): CloseName | undefined {
    this.earlyBytes += update.byteLength;
    if (this.offered || this.earlyBytes > this.limits.earlyBytes) return "roomReloaded";
    this.early.push(update);
    return undefined;
  }

  /** The page has sent everything it holds: what came too early can be applied now. */
  private takeOffer(): CloseName | undefined {
    const early = this.early;
    this.early = [];
    this.offered = true;
    for (const update of early) {
      const result = this.room.apply(this, update);
      const refused = this.refuse(result, false);
      if (refused) return refused;
      if (result !== "applied") return "roomReloaded";
    }
    this.count(1 + early.length);
    return undefined;
  }

  /**
   * After a power cut an honest page may hold another page's changes that the log has lost. Only that other page may bring
   * them, and this one retries until they are there. No page of ours sends such changes as fresh updates.
   */
  private refuse(verdict: UpdateOutcome, isOffer: boolean): CloseName | undefined {
    if (verdict !== "erasing" && verdict !== "forged" && verdict !== "heavy" && verdict !== "full") return undefined;
    this.room.noteRefused(this, verdict, 1);
    if (verdict === "heavy") return "tooHeavy";
    if (verdict === "full") return "full";
    return verdict === "forged" && isOffer ? "othersFirst" : "erasing";
  }

  /** A reader's page sends what it holds, as every page does. That is fine as long as nothing in it is new. */
  private takeFromReader(update: Uint8Array): CloseName | undefined {
    if (!this.room.holds(update)) {
      this.room.noteRefused(this, "a reader's change", 1);
      return "noRight";
    }
    this.count(1);
    return this.strain(1);
  }

  private takePresence(update: Uint8Array): CloseName | undefined {
    // A stock y-websocket page announces itself even as a reader: refused without closing.
    const refused = this.access.writes ? this.room.takePresence(this, update) : 1;
    if (refused === 0) return undefined;
    this.room.noteRefused(this, this.access.writes ? "another's presence" : "a reader's presence", refused);
    return this.strain(1);
  }

  /** A few forbidden messages are tolerated, since stock pages send them. A flood of them ends the connection. */
  private strain(messages: number): CloseName | undefined {
    const now = performance.now();
    if (now - this.strainedSince > this.limits.refusalsMs) {
      this.strained = 0;
      this.strainedSince = now;
    }
    this.strained += messages;
    return this.strained > this.limits.refusals ? "turnedAway" : undefined;
  }

  private count(messages: number): void {
    this.counted += messages;
    this.meter.took(messages);
    this.room.owesAnswer(this);
  }

  setAccess(access: DocAccess): void {
    this.takeHeard();
    const gained = access.writes && !this.access.writes;
    this.access = access;
    this.send(newsFrame({ t: "rights", writes: access.writes, comments: access.comments }));
    // Asks for what the page held back while it was only allowed to read.
    if (gained) this.send(step1Frame(this.room.doc));
  }

  send(frame: Uint8Array): void {
    if (!this.open || this.ws.readyState !== this.ws.OPEN) return;
    if (this.ws.bufferedAmount > this.limits.bufferedBytes) this.close("tooSlow");
    else {
      this.meter.sent(frame.byteLength);
      this.ws.send(frame);
    }
  }

  takeArrival(): number | undefined {
    const { arrived } = this;
    this.arrived = undefined;
    return arrived;
  }

  sendNews(news: News): void {
    this.send(newsFrame(news));
  }

  murmur(): void {
    this.send(MURMUR_FRAME);
  }

  ping(): void {
    if (!this.alive) this.ws.terminate();
    else if (this.ws.readyState === this.ws.OPEN) this.ws.ping();
    this.alive = false;
  }

  close(name: CloseName): void {
    if (!this.open) return;
    this.ended();
    closeSocket(this.ws, name, this.limits.closeMs);
  }

  /** The socket is gone. Idempotent. */
  ended(): void {
    if (!this.open) return;
    // What the page sent before it left still counts. The result does not matter: there is nobody left to tell.
    this.readHeard();
    if (!this.open) return;
    this.open = false;
    this.early = [];
    this.room.leave(this);
  }
}

/** Closes with a reason. Only its name is sent, not the sentence: a close reason holds 123 bytes (RFC 6455, 5.5). */
export const closeSocket = (ws: WebSocket, name: CloseName, closeMs: number): void =>
  endSocket(ws, CLOSE[name].code, name, closeMs);
