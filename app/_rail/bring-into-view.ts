/** Scrolls as little as shows an element, and its beginning in any case. */

/**
 * `scroll-margin` of the element is kept free above and below it. The browser's own `block: "nearest"` shows the end of what
 * is taller than the screen when one comes from below, with its head behind the page's header.
 */
export function bringIntoView(element: HTMLElement): void {
  const { scrollMarginTop, scrollMarginBottom } = getComputedStyle(element);
  const { top, bottom } = element.getBoundingClientRect();
  const by = scrollToShow({
    top: top - (Number.parseFloat(scrollMarginTop) || 0),
    bottom: bottom + (Number.parseFloat(scrollMarginBottom) || 0),
    height: innerHeight,
  });
  if (by !== 0) scrollBy({ top: by });
}

/** Pixels to scroll by; `top` and `bottom` from the top of a screen of that height. */
export function scrollToShow({ top, bottom, height }: { top: number; bottom: number; height: number }): number {
  if (top < 0) return top;
  return Math.max(0, Math.min(bottom - height, top));
}
