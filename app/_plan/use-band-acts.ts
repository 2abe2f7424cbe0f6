"use client";
/** Where the figures of the line over the plan lead: to the next finding, and to what the figure of talk is made of. */
import { TALK_PART } from "#app/_rate/talk-part-id.ts";
import type { Page } from "./use-page.ts";

export function useBandActs({ acts: { show }, goToFinding }: Page) {
  const onTalk = () => {
    show(null);
    requestAnimationFrame(() => document.getElementById(TALK_PART)?.focus());
  };
  return { onFinding: goToFinding, onTalk };
}
