"use client";
/**
 * Goes to what the address names after its `#`: a thread, or another part of the page by its id. Threads come with the live
 * connection, and what they are in opens late, so both are waited for.
 */
import { useEffect, useState } from "react";
import { OPEN_THREADS } from "#app/_session/threads/go-to-place.ts";
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
  const [wanted, setWanted] = useState(() => ({ hash: location.hash }));
  useEffect(() => {
    const changed = () => setWanted({ hash: location.hash });
    // A link to where the address already is changes nothing that the browser tells of.
    const pressed = ({ target }: MouseEvent) => {
      const link = target instanceof Element ? target.closest('a[href^="#"]') : null;
      if (link?.getAttribute("href") === location.hash) changed();
    };
    addEventListener("hashchange", changed);
    addEventListener("click", pressed);
    return () => {
      removeEventListener("hashchange", changed);
      removeEventListener("click", pressed);
    };
  }, []);
  const first = wanted.hash === OPEN_THREADS ? openThreads(plan, threads)[0] : undefined;
  const [, id, key] = PLACE.exec(first ? `#thread-${first.id}` : decoded(wanted.hash)) ?? [];
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
  }, [here, wanted]);
}

/** Those about the class as a whole come first. */
export function openThreads({ items }: Pick<Plan, "items">, threads: readonly ThreadView[]): readonly ThreadView[] {
  const place = new Map(items.map(({ id }, i) => [id, i]));
  const at = ({ anchor }: ThreadView) => place.get(itemOfAnchor(anchor) ?? "") ?? -1;
  return threads.filter(({ settled }) => !settled).toSorted((a, b) => at(a) - at(b));
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
