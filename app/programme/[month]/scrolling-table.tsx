/** A table wider than a phone: it scrolls inside itself, by the keyboard too (WCAG 2.2, 2.1.1). */
import type { ReactNode } from "react";

export function ScrollingTable({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by keyboard
    <section className="table-scroll" aria-label={`${title}, table`} tabIndex={0}>
      {children}
    </section>
  );
}
