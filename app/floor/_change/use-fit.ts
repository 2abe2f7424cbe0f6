/** Tries sizes on an element until its words have room. Sizes are CSS variables, so nothing is drawn again by React. */
import { type RefObject, useLayoutEffect, useRef } from "react";

/** Groups of trials, best first; the last of a group needs the least room. */
type Groups<T> = readonly (readonly T[])[];

interface Asked<T> {
  trials(box: HTMLElement): Groups<T>;
  take(box: HTMLElement, trial: T): void;
}

/**
 * Fitted again when `text` changes or the element gets another size. Elements with `data-fit` are checked by themselves; those with `data-extra` are shown
 * where the sizes that were chosen leave room for them.
 */
export function useFit<T>(text: string, asked: Asked<T>): RefObject<HTMLElement | null> {
  const box = useRef<HTMLElement>(null);
  const latest = useRef(asked);
  latest.current = asked;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text is not read here, but the space it takes is measured
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const choose = () => chooseSizes(element, latest.current);
    choose();
    const observer = new ResizeObserver(choose);
    observer.observe(element);
    document.fonts.ready.then(choose);
    return () => observer.disconnect();
  }, [text]);
  return box;
}

function chooseSizes<T>(box: HTMLElement, { trials, take }: Asked<T>): void {
  const extras = [...box.querySelectorAll<HTMLElement>("[data-extra]")];
  for (const extra of extras) extra.hidden = true;
  const fits = (trial: T | undefined): boolean => {
    if (trial === undefined) return false;
    take(box, trial);
    return hasRoom(box);
  };
  const group = trials(box).find((one) => fits(one.at(-1)));
  group?.find(fits);
  for (const extra of extras) showIfStill(box, extra);
}

/** Widths of an extra, shares of the screen's: the largest that has room. */
const EXTRA_SHARES = [0.27, 0.21, 0.15] as const;

/** Shown only if everything else stays as it is: no word moves, none gets another line. */
function showIfStill(box: HTMLElement, extra: HTMLElement): void {
  const places = () => [...box.querySelectorAll("li, [data-part], [role=timer]")].map((part) => placeOf(part)).join();
  const before = places();
  extra.hidden = false;
  extra.hidden = !EXTRA_SHARES.some((share) => {
    extra.style.width = `${share * 100}vw`;
    return places() === before && hasRoom(box);
  });
}

function placeOf(part: Element): string {
  const { x, y, width, height } = part.getBoundingClientRect();
  return [x, y, width, height].map(Math.round).join(" ");
}

function hasRoom(box: HTMLElement): boolean {
  return [box, ...box.querySelectorAll<HTMLElement>("[data-fit]")].every(
    (part) => part.scrollHeight <= part.clientHeight + 1 && part.scrollWidth <= part.clientWidth + 1,
  );
}
