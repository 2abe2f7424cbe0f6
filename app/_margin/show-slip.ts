/** Brings the slip of a finding into sight, with the focus where it was pressed for. Client only. */
import type { Finding } from "#lib/rules/define/types.ts";

/** A finding without a key is about a whole: the first of its rule stands for it. */
export const slipKey = ({ key, rule }: Finding): string => key ?? rule;

export function showSlip(finding: Finding, focus: boolean): void {
  const slip = document.querySelector<HTMLElement>(`[data-finding="${CSS.escape(slipKey(finding))}"]`);
  if (focus) slip?.focus({ preventScroll: true });
  slip?.scrollIntoView({ block: "center" });
}
