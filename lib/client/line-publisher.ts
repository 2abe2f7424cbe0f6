/** Says on the line what runs on this screen: asks to lead when nobody does, tells the class when it leads, steps down after. */
import { movedBy } from "#lib/line/class.ts";
import type { LineClass, ToServer } from "#lib/line/messages.ts";
import type { LineClocks } from "./line-clocks.ts";
import type { LinkState } from "./link-state.ts";

/** What runs on this screen: a class with times of this device's own clock; nothing; or not known yet, as while asking. */
export type OwnClass = LineClass | "nothing" | "not-known";

/** The class is told again when this device's clock has drifted so far from where it was when it was told. ms */
const DRIFTED_MS = 5;

export interface LinePublisher {
  runs(own: OwnClass): void;
  /** Somebody wants this screen to lead: until it is known what it then runs, it does not step down. */
  wants(): void;
  /** Says what the line, as it is, does not know yet. */
  say(state: LinkState): void;
  /** The connection is gone: on the next one all is said again. */
  forget(): void;
}

interface TellerSetup {
  readonly clocks: LineClocks;
  send(message: ToServer): void;
  now(): number;
}

export function linePublisher({ clocks, send, now }: TellerSetup): LinePublisher {
  let own: OwnClass = "not-known";
  /** What the others were told: in which term, of which class, with which offset. */
  let told: { term: number; own: LineClass; offset: number } | null = null;
  /** The term in which this screen asked to begin, or stepped down: once is enough. */
  let spokenInTerm: number | null = null;

  const once = (message: Extract<ToServer, { t: "lead" | "step-down" }>): void => {
    if (spokenInTerm === message.term) return;
    spokenInTerm = message.term;
    send(message);
  };
  const tell = (is: LineClass, term: number): void => {
    const offset = clocks.offset(now());
    if (told?.term === term && told.own === is && Math.abs(told.offset - offset) <= DRIFTED_MS) return;
    told = { term, own: is, offset };
    send({ t: "class", term, class: { ...is, log: movedBy(is.log, offset) } });
  };

  return {
    runs(is) {
      own = is;
    },
    wants() {
      // A class of its own stays its own; a follower takes on what it follows, once it leads.
      if (own === "nothing") own = "not-known";
    },
    say({ line, you, contact }) {
      if (!line || contact !== "on" || !clocks.ready || own === "not-known") return;
      const { term, leader } = line;
      const leads = leader !== null && leader.id === you;
      if (own === "nothing") {
        if (leads) once({ t: "step-down", term });
      } else if (leads) tell(own, term);
      else if (!leader) once({ t: "lead", term, sure: false });
    },
    forget() {
      told = null;
      spokenInTerm = null;
    },
  };
}
