"use client";
/** Goes to the item, or the line of its script, that the address names, as a search does (`lib/protocol/places.ts`). */
import { useEffect } from "react";
import type { PlanSession } from "#app/_session/session.ts";

/** `show` opens an item. What finds the place is fetched only by a page whose address names one. */
export function useNamedLine(session: PlanSession, show: (itemId: string | null) => void): void {
  useEffect(() => {
    const go = () => {
      if (!location.hash.startsWith("#line-")) return;
      void import("./go-to-named-line.ts").then(
        ({ goToNamedLine }) => goToNamedLine(session, show),
        () => undefined,
      );
    };
    go();
    addEventListener("hashchange", go);
    return () => removeEventListener("hashchange", go);
  }, [session, show]);
}
