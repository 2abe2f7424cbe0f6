/** Fields of the panel, found by their labels since they are made anew each time an item is opened. */

export function fieldName(element: Element): string | null {
  const own = element.getAttribute("aria-label");
  if (own !== null) return own;
  const isLabelled = element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement;
  return isLabelled ? (element.labels?.[0]?.textContent ?? null) : null;
}

/** Focuses the field of the panel with that label, else the item on the rail. */
export function focusField(name: string | null, itemId: string): void {
  const fields = document.querySelectorAll<HTMLElement>("aside :is(input, textarea, [role='textbox'])");
  const field = name === null ? undefined : [...fields].find((other) => fieldName(other) === name);
  (field ?? document.getElementById(`rail-${itemId}`))?.focus();
}
