/**
 * One page's socket in one room: reads its messages in order, decides whether each may count, and sends. It knows the
 * person and their rights; what a change means for the document is the room's business.
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
import type { PageConnection } from "./page-connection.ts";
import type { DocumentRoom, UpdateOutcome } from "./room.ts";

/** Whose connection it is, what they may do, and the lane that their work is paid from. */
export interface Holder {
  readonly session: SessionInfo;
  readonly access: DocAccess;
  readonly lane: FrameLane;
}

export class Connection implements PageConnection {
  readonly session: SessionInfo;
  readonly room: DocumentRoom;
  access: DocAccess;
  /** Document messages of this page that are in the room; all of them are on disk when the room is clean. */
  counted = 0;
  private readonly ws: WebSocket;
  private readonly limits: Limits;
  private readonly lane: FrameLane;
  private open = true;
  private alive = true;
  /** Updates of this turn that the room has not taken yet: put together, many cost little more than one. */
  private heard: Uint8Array[] = [];
  private heardBytes = 0;
  /** Updates that came before the page's first full offer and lack what that offer brings. */
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
    this.access = who.access;
    this.limits = limits;
    ws.on("pong", () => {
      this.alive = true;
    });
  }

  /** One frame of the page. Whatever is wrong with it ends this connection only. */
  receive(data: Uint8Array, isBinary: boolean): void {
    if (!this.open) return;
    // The answer to a ping may wait behind what else the page sent.
    this.alive = true;
    const wrong = this.read(data, isBinary);
    if (wrong) this.close(wrong);
  }

  /** Takes a frame in. The name of the close it deserves, when it does. */
  private read(data: Uint8Array, isBinary: boolean): CloseName | undefined {
    if (data.byteLength > this.limits.messageBytes) return "tooLarge";
    if (!isBinary) return "badMessage";
    try {
      return this.dispatch(decoding.createDecoder(data));
    } catch {
      // Every exception that comes this far is a message that could not be decoded; the room guards its own.
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
        // Also where nobody shows anything: a page asks in order to hear whether the line still lives.
        this.murmur();
        return undefined;
      default:
        return "badMessage";
    }
  }

  private takeSync(kind: number, body: Uint8Array): CloseName | undefined {
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

  /** Gives the room what the page said in this turn. */
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
    // One by one, so that what was right before the one that is wrong counts; each in its turn, since each may be expensive.
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
    // Two pages that each hold lost words of the other would wait for each other for good.
    if (result === "forged" && isOffer) this.room.apply(this, this.room.ownPart(this, update));
    const refused = this.refuse(result, isOffer);
    if (refused) return refused;
    if (result === "broken") return "roomReloaded";
    if (isOffer) return result === "gap" ? "roomReloaded" : this.takeOffer();
    if (result === "applied") this.count(1);
    else return this.keepEarly(update);
    return undefined;
  }

  /** Typed while the connection was opening, on top of words the server has not been offered yet. */
  private keepEarly(update: Uint8Array): CloseName | undefined {
    this.earlyBytes += update.byteLength;
    if (this.offered || this.earlyBytes > this.limits.earlyBytes) return "roomReloaded";
    this.early.push(update);
    return undefined;
  }

  /** The page has offered all it holds: what came too early can be read now. */
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
   * After a power cut an honest page may hold words of another that the log has lost: they are that page's to bring, and
   * this one tries again until they are there. As fresh words they are nothing a page of ours sends.
   */
  private refuse(verdict: UpdateOutcome, isOffer: boolean): CloseName | undefined {
    if (verdict !== "erasing" && verdict !== "forged" && verdict !== "heavy" && verdict !== "full") return undefined;
    this.room.noteRefused(this, verdict, 1);
    if (verdict === "heavy") return "tooHeavy";
    if (verdict === "full") return "full";
    return verdict === "forged" && isOffer ? "othersFirst" : "erasing";
  }

  /** A reader's page offers what it holds, as every page does: that is no offence while it is nothing new. */
  private takeFromReader(update: Uint8Array): CloseName | undefined {
    if (!this.room.holds(update)) {
      this.room.noteRefused(this, "a reader's words", 1);
      return "noRight";
    }
    this.count(1);
    return this.strain(1);
  }

  private takePresence(update: Uint8Array): CloseName | undefined {
    // A stock page shows itself unasked, a reader's too: turned away without closing.
    const refused = this.access.writes ? this.room.takePresence(this, update) : 1;
    if (refused === 0) return undefined;
    this.room.noteRefused(this, this.access.writes ? "another's presence" : "a reader's presence", refused);
    return this.strain(1);
  }

  /** Asking for what is not one's own is no offence while it is seldom: stock pages do. A flood of it is. */
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
    this.room.owesAnswer(this);
  }

  /** New rights count for the very next message. */
  setAccess(access: DocAccess): void {
    this.takeHeard();
    const gained = access.writes && !this.access.writes;
    this.access = access;
    this.send(newsFrame({ t: "rights", writes: access.writes, comments: access.comments }));
    // Asks for what the page held back while it could only read.
    if (gained) this.send(step1Frame(this.room.doc));
  }

  send(frame: Uint8Array): void {
    if (!this.open || this.ws.readyState !== this.ws.OPEN) return;
    if (this.ws.bufferedAmount > this.limits.bufferedBytes) this.close("tooSlow");
    else this.ws.send(frame);
  }

  sendNews(news: News): void {
    this.send(newsFrame(news));
  }

  murmur(): void {
    this.send(MURMUR_FRAME);
  }

  /** Pings, and lets go of a socket that did not answer the last ping. */
  ping(): void {
    if (!this.alive) this.ws.terminate();
    else if (this.ws.readyState === this.ws.OPEN) this.ws.ping();
    this.alive = false;
  }

  /** Ends it from this side. The room hears of it at once, the page by its close code. */
  close(name: CloseName): void {
    if (!this.open) return;
    this.ended();
    closeSocket(this.ws, name, this.limits.closeMs);
  }

  /** The socket is gone. Idempotent. */
  ended(): void {
    if (!this.open) return;
    // What the page said before it went has been said. Nothing comes of a verdict: it has gone.
    this.readHeard();
    if (!this.open) return;
    this.open = false;
    this.early = [];
    this.room.leave(this);
  }
}

/** Says why and lets go. The name, not the sentence, travels: a close reason holds 123 bytes (RFC 6455, 5.5). */
export const closeSocket = (ws: WebSocket, name: CloseName, closeMs: number): void =>
  endSocket(ws, CLOSE[name].code, name, closeMs);
