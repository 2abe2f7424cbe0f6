"use client";
/**
 * Goes to what the address names after its `#`: a thread, or another part of the page by its id. Threads come with the live
 * connection, and what they are in opens late, so both are waited for.
 */
import { useEffect, useState } from "react";
import { itemOfAnchor } from "#lib/margin/anchor-item.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";

const WAIT_MS = 5_000;
const PLACE = /^#((?:thread|proposal)-(.+))$/;

interface PlanNow {
  readonly plan: Pick<Plan, "items">;
  readonly threads: readonly ThreadView[];
}

/** `show` opens an item, or with null the class. */
export function useNamedPlace({ plan, threads }: PlanNow, show: (itemId: string | null) => void): void {
  const [wanted, setWanted] = useState(() => location.hash);
  useEffect(() => {
    const changed = () => setWanted(location.hash);
    addEventListener("hashchange", changed);
    return () => removeEventListener("hashchange", changed);
  }, []);
  const [, id, key] = PLACE.exec(decoded(wanted)) ?? [];
  const thread = threads.find((one) => `thread-${one.id}` === id);
  const itemId = thread ? itemOfAnchor(thread.anchor) : null;
  const here = id !== undefined && (thread !== undefined || !id.startsWith("thread-"));
  // Once for each address: what somebody opens afterwards stays open.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the plan and its threads change while somebody reads
  useEffect(() => {
    if (!here || id === undefined || key === undefined) return;
    if (thread) show(plan.items.some((item) => item.id === itemId) ? itemId : null);
    return whenHere(id, (place) => {
      const folded = place.closest("details");
      if (folded) folded.open = true;
      place.scrollIntoView({ block: "center" });
      place.focus({ preventScroll: true });
    });
  }, [here, id]);
}

function decoded(hash: string): string {
  try {
    return decodeURIComponent(hash);
  } catch {
    return "";
  }
}

/** Runs `then` as soon as the element is in the page; gives up after a while, or when the returned function is called. */
function whenHere(id: string, then: (place: HTMLElement) => void): () => void {
  const look = () => {
    const place = document.getElementById(id);
    if (!place) return;
    stop();
    // Its place is known once the page has been drawn with it.
    requestAnimationFrame(() => requestAnimationFrame(() => then(place)));
  };
  const seen = new MutationObserver(look);
  const tooLate = setTimeout(() => stop(), WAIT_MS);
  const stop = () => {
    seen.disconnect();
    clearTimeout(tooLate);
  };
  seen.observe(document.body, { childList: true, subtree: true });
  look();
  return stop;
}
