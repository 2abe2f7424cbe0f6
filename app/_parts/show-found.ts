/** Marks for a moment what somebody was led to, so that the eye finds it among its like. */

/** Long enough to be seen after the page has scrolled. Our own choice. */
const SHOWN_MS = 2_500;
/** An editor that has just been made draws its lines anew for a few frames. */
const SETTLES_MS = 1_000;

/**
 * `find` is asked until what it gives stays the same element. An animation that does not move leaves no trace on an element that
 * an editor watches, and ends by itself.
 */
export function showFound(find: () => Element | null): void {
  const until = performance.now() + SETTLES_MS;
  let shown: Element | null = null;
  const look = () => {
    const element = find();
    if (element && element !== shown) mark(element);
    shown = element;
    if (performance.now() < until) requestAnimationFrame(look);
  };
  look();
}

function mark(element: Element): void {
  const look = { outline: "var(--bar) solid var(--focus)", outlineOffset: "2px", backgroundColor: "var(--wash)" };
  element.animate([look, look], { duration: SHOWN_MS, id: "found" });
}
