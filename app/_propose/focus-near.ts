/** Where the keyboard goes when a proposal that had it is gone: the sign of it, the list, or the plate. */
const PLACES = ["[data-taken-here]", "dialog[open] summary", "dialog[open] button", '[aria-label="The chosen item"]'];

/** Waits until the page has drawn what is left; whoever has moved on meanwhile stays there. */
export function focusNear(tries = 30): void {
  requestAnimationFrame(() => {
    const { activeElement } = document;
    const isLost =
      activeElement === document.body || activeElement === null || activeElement.closest("dialog") === activeElement;
    if (isLost)
      PLACES.map((place) => document.querySelector<HTMLElement>(place))
        .find((one) => one !== null)
        ?.focus();
    else if (tries > 0 && activeElement.closest("[data-proposal]")) focusNear(tries - 1);
  });
}
