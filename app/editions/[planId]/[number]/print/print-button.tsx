"use client";
/** Opens the browser's own print window. */
export function PrintButton() {
  return (
    <button type="button" className="button button-strong" onClick={() => window.print()}>
      Print
    </button>
  );
}
