/** Where the keyboard goes among the slips of findings: to one that was asked for, and on from one that has gone. Client only. */
import type { Finding } from "#lib/rules/define/types.ts";

/** A finding without a key is about the whole class: the first of its rule is shown for it. */
export const slipKey = ({ key, rule }: Finding): string => key ?? rule;

export function showSlip(finding: Finding, focus: boolean): void {
  const slip = document.querySelector<HTMLElement>(`[data-finding="${CSS.escape(slipKey(finding))}"]`);
  // What is found about words that are only proposed is folded.
  const folded = slip?.closest("details");
  if (folded) folded.open = true;
  if (focus) slip?.focus({ preventScroll: true });
  slip?.scrollIntoView({ block: "center" });
}

/**
 * Call before a slip's act: once the slip has gone with what it found, the keyboard goes on to the next slip of its list, else
 * to the item.
 */
export function goOnFrom(slip: HTMLElement | null): void {
  const slips = [...(slip?.closest("ul")?.querySelectorAll<HTMLElement>("[data-finding]") ?? [])];
  const at = slip ? slips.indexOf(slip) : -1;
  const next = slips[at + 1]?.dataset.finding ?? slips[at - 1]?.dataset.finding;
  const item = document.querySelector<HTMLElement>('[role="option"][aria-selected="true"]');
  // The plan is read again in the first frame and drawn by the second.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      if (document.activeElement !== document.body) return;
      const there =
        next === undefined ? null : document.querySelector<HTMLElement>(`[data-finding="${CSS.escape(next)}"]`);
      (there ?? item)?.focus();
    }),
  );
}

/**
 * Call before a thread is settled, and what it returns afterwards: once the slip has gone, the keyboard goes on to the next one
 * of its list, else to the item.
 */
export function goOnFromThread(slip: HTMLElement | null): () => void {
  const slips = [...(slip?.closest("ul")?.querySelectorAll<HTMLElement>("article") ?? [])];
  const at = slip ? slips.indexOf(slip) : -1;
  const next = slips[at + 1] ?? slips[at - 1];
  const hadFocus = slip?.contains(document.activeElement) ?? false;
  return () => {
    if (!hadFocus) return;
    // The news of it may come a moment after the answer.
    let frames = 20;
    const look = () => {
      if (document.activeElement !== document.body)
        return frames-- > 0 && slip?.isConnected && requestAnimationFrame(look);
      const item = document.querySelector<HTMLElement>('[role="option"][aria-selected="true"]');
      (next?.isConnected ? next : item)?.focus();
    };
    requestAnimationFrame(look);
  };
}
