/** Scrolls the slip of a finding into view, and focuses it where the keyboard asked for it. Client only. */
import type { Finding } from "#lib/rules/define/types.ts";

/** A finding without a key is about the whole class: the first of its rule is shown for it. */
export const slipKey = ({ key, rule }: Finding): string => key ?? rule;

export function showSlip(finding: Finding, focus: boolean): void {
  const slip = document.querySelector<HTMLElement>(`[data-finding="${CSS.escape(slipKey(finding))}"]`);
  if (focus) slip?.focus({ preventScroll: true });
  slip?.scrollIntoView({ block: "center" });
}
