/**
 * Publishes on the line what runs on this screen: asks to lead when nobody does, sends the class while it leads, steps
 * down afterwards.
 */
import { movedBy } from "#lib/line/class.ts";
import type { LineClass, ToServer } from "#lib/line/messages.ts";
import type { LineClocks } from "./line-clocks.ts";
import type { LinkState } from "./link-state.ts";

/**
 * What runs on this screen: a class, with times of this device's own clock; nothing; or not known yet, for instance
 * while it is asking.
 */
export type OwnClass = LineClass | "nothing" | "not-known";

/**
 * The class is sent again once this device's clock has drifted this far from where it was when it was last sent, ms.
 */
const DRIFTED_MS = 5;

interface PublisherSetup {
  readonly clocks: LineClocks;
  send(message: ToServer): void;
  now(): number;
}

export class LinePublisher {
  private readonly setup: PublisherSetup;
  private own: OwnClass = "not-known";
  /** What the others were last sent: the term, the class and the clock offset. */
  private told: { term: number; own: LineClass; offset: number } | null = null;
  /** The term in which this screen asked to begin, or stepped down: it does so once a term. */
  private spokenInTerm: number | null = null;

  constructor(setup: PublisherSetup) {
    this.setup = setup;
  }

  runs(own: OwnClass): void {
    this.own = own;
  }

  /** Somebody wants this screen to lead: it does not step down until it is known what it then runs. */
  wants(): void {
    // A class of its own stays; a follower takes over the class it follows once it leads.
    if (this.own === "nothing") this.own = "not-known";
  }

  /** Sends what the line does not know yet. */
  say({ line, you, contact }: LinkState): void {
    const { own } = this;
    if (!line || contact !== "on" || !this.setup.clocks.ready || own === "not-known") return;
    const { term, leader } = line;
    const leads = leader !== null && leader.id === you;
    if (own === "nothing") {
      if (leads) this.once({ t: "step-down", term });
    } else if (leads) this.tell(own, term);
    else if (!leader) this.once({ t: "lead", term, sure: false });
  }

  /** The connection is gone: everything is sent again on the next one. */
  forget(): void {
    this.told = null;
    this.spokenInTerm = null;
  }

  private once(message: Extract<ToServer, { t: "lead" | "step-down" }>): void {
    if (this.spokenInTerm === message.term) return;
    this.spokenInTerm = message.term;
    this.setup.send(message);
  }

  private tell(own: LineClass, term: number): void {
    const { clocks, send, now } = this.setup;
    const offset = clocks.offset(now());
    const { told } = this;
    if (told?.term === term && told.own === own && Math.abs(told.offset - offset) <= DRIFTED_MS) return;
    this.told = { term, own, offset };
    send({ t: "class", term, class: { ...own, log: movedBy(own.log, offset) } });
  }
}
