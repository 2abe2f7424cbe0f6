/** The state of a line as a shape: a tick in a ring, a filled triangle with a stroke, an empty ring with a dot. */
import type { LineState } from "./state-words.ts";

export function StateSign({ is }: { readonly is: LineState }) {
  const drawing = { width: 22, height: 22, viewBox: "0 0 22 22" } as const;
  const stroke = { fill: "none", stroke: "currentColor", strokeWidth: 2, strokeLinecap: "round" } as const;
  if (is === "right")
    return (
      <svg {...drawing} aria-hidden="true">
        <circle cx="11" cy="11" r="9" {...stroke} />
        <path d="M6.5 11.5l3 3 6-7" {...stroke} strokeLinejoin="round" />
      </svg>
    );
  if (is === "wrong")
    return (
      <svg {...drawing} aria-hidden="true">
        <path d="M11 2L21 20H1z" fill="currentColor" stroke="currentColor" strokeWidth="1" strokeLinejoin="round" />
        <path d="M11 8.5v5M11 17v.01" fill="none" stroke="var(--paper)" strokeWidth="2" strokeLinecap="round" />
      </svg>
    );
  return (
    <svg {...drawing} aria-hidden="true">
      <circle cx="11" cy="11" r="9" {...stroke} strokeDasharray="4 3" />
      <circle cx="11" cy="11" r="2" fill="currentColor" />
    </svg>
  );
}
