/** A class that runs on this screen: sent to the other screens, or run apart from them while another screen leads. */
import { useEffect, useRef } from "react";
import type { Card } from "#lib/card/schema.ts";
import type { LinkState } from "#lib/client/link-state.ts";
import { lineClassOf } from "#lib/line/class.ts";
import { isLeaderAbsent } from "#lib/line/line.ts";
import type { RunningClass } from "../_parts/use-class.ts";
import type { FloorLine } from "./use-line.ts";

export interface Lead {
  /** Another screen leads: this class runs on this screen alone. */
  readonly apart: boolean;
  /** The other screen leads this same class, so that screen files its log. */
  readonly sameClass: boolean;
  /** Answers the screen that asks to lead. */
  answer(yes: boolean): void;
}

export function useLead({ state, link }: FloorLine, card: Card, live: RunningClass, onHandedOver: () => void): Lead {
  const { log, sessionId } = live;
  const saidYes = useRef(false);
  useEffect(() => link?.runs(lineClassOf(card, sessionId, log)), [link, card, sessionId, log]);

  const apart = leadsElsewhere(state);
  const handedOver = useRef(onHandedOver);
  handedOver.current = onHandedOver;
  useEffect(() => {
    if (apart && saidYes.current) handedOver.current();
  }, [apart]);

  return {
    apart,
    sameClass: apart && state.line?.told?.session === sessionId,
    answer(yes) {
      saidYes.current = yes;
      link?.answer(yes);
    },
  };
}

/** Has the leader been gone for so long that nobody needs to ask them? */
export function isLeaderGone({ state: { line }, link }: FloorLine): boolean {
  const studioNow = link?.studioNow() ?? null;
  return line !== null && studioNow !== null && isLeaderAbsent(line, studioNow);
}

/** Does another screen of this room lead? */
export const leadsElsewhere = ({ line, you }: LinkState): boolean =>
  line !== null && line.leader !== null && line.leader.id !== you;
