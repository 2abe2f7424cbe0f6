/**
 * What makes a change known without reading: a light ground where work's is dark, a comb with a tooth for each second left,
 * the seconds in a dark tab, and acts as the largest words. Also that its acts are the ones that the plan calls, in order.
 */
import { CAP_RATIO, capArcMinutes } from "#lib/floor/legibility.ts";
import type { FloorView } from "#lib/floor/view.ts";

/** The least angles, minutes of arc: of what is said now and the seconds, and of what follows the verb of a long act. */
const READ_ARC = 20;
const LONG_ACT_ARC = 16;

/** Each fault as a sentence. Only while the class runs and is heard: else the plate has other forms. */
export function changeFaults(root: HTMLElement, { phase, item, headsUp, secondsLeft }: FloorView): string[] {
  const plate = root.querySelector<HTMLElement>("[data-change]");
  const comb = root.querySelector<HTMLElement>("[data-comb]");
  if (phase !== "change" || !item?.nowOn) {
    if (plate) return ["the plate of a change outside a change"];
    return comb && !headsUp ? ["a comb during work"] : [];
  }
  if (!plate) return ["a change without its plate"];
  return [
    ...(lightness(plate) - lightness(root) > 0.5 ? [] : ["the ground of the change is the ground of work"]),
    ...(Number(comb?.dataset.comb) === secondsLeft && isDrawn(comb) ? [] : ["not a tooth for each second"]),
    ...tabFaults(plate, secondsLeft),
    ...(isDeepEqual(
      wordsOfActs(plate),
      item.acts.map(({ words }) => words),
    )
      ? []
      : ["other acts than those called"]),
    ...largestFaults(root),
  ];
}

/** What the open act and the seconds fall short of, seen from `distanceM`. */
export function angleFaults(root: HTMLElement, distanceM: number): string[] {
  const plate = root.querySelector<HTMLElement>("[data-change]");
  if (!plate) return [];
  const open = openPart(plate);
  const verb = open?.querySelector(":scope > strong") ?? null;
  const rest = open?.matches("li") ? open : null;
  // Springs of two kinds may go down to the same angle as the rest of a long act.
  const kinds = open?.matches("div") && verb?.textContent?.includes(" and ");
  const least: readonly (readonly [string, Element | null, number])[] = [
    ["the act said now", verb, kinds ? LONG_ACT_ARC : READ_ARC],
    ["the seconds", plate.querySelector('[role="timer"] span'), READ_ARC],
    ["the rest of the act", rest, LONG_ACT_ARC],
  ];
  return least.flatMap(([name, element, arc]) => {
    if (!element) return name === "the rest of the act" ? [] : [`${name} is not there`];
    const is = capArcMinutes(sizeOf(element), CAP_RATIO, distanceM * 1000);
    return is >= arc - 0.01 ? [] : [`${name} has ${is.toFixed(1)} arcmin of ${arc}`];
  });
}

const sizeOf = (element: Element): number => Number.parseFloat(getComputedStyle(element).fontSize);
const openPart = (plate: HTMLElement) => plate.querySelector<HTMLElement>('[data-open="true"]');
const wordsOfActs = (plate: HTMLElement) =>
  [...plate.querySelectorAll("li")].map(
    (act) => act.textContent?.replace(/\s+/g, " ").trim().replace(TITLES, "") ?? "",
  );
/** The titles of the coils stand after the words. */
const TITLES = /(?<=\S) (?:light|middle|firm|strong)+$/;
const isDeepEqual = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
const isDrawn = (comb: HTMLElement | null) => (comb?.getBoundingClientRect().height ?? 0) >= 8;

function tabFaults(plate: HTMLElement, secondsLeft: number): string[] {
  const tab = plate.querySelector<HTMLElement>('[role="timer"]');
  if (!tab?.checkVisibility()) return ["the seconds are not on the plate"];
  return [
    ...(lightness(plate) - lightness(tab) > 0.5 ? [] : ["the tab of the seconds is not dark"]),
    ...(secondsLeft >= 100 || tab.firstElementChild?.textContent === String(secondsLeft) ? [] : ["other seconds"]),
  ];
}

/** Nothing on the whole screen is larger than the open act, or than "now on" while the springs are checked. */
function largestFaults(root: HTMLElement): string[] {
  const act = root.querySelector(
    '[data-change] li[data-open="true"] strong, [data-change] div[data-open="true"] > strong',
  );
  if (!act) return ["no act is open"];
  // While the springs are checked, names of two kinds may be a little smaller than the seconds.
  const least = sizeOf(act);
  const most = Number.parseFloat(
    root.querySelector<HTMLElement>("[data-change]")?.style.getPropertyValue("--open") ?? "",
  );
  const larger = [...root.querySelectorAll<HTMLElement>("*")].filter(
    (one) =>
      one.children.length === 0 &&
      one.textContent?.trim() &&
      one.checkVisibility() &&
      sizeOf(one) > (one.closest('[role="timer"]') ? most : least) + 0.5,
  );
  return larger.slice(0, 1).map((one) => `larger than the act: ${one.textContent}`);
}

/** 0..1, of the ground that is painted behind an element. */
function lightness(element: HTMLElement): number {
  const painted = getComputedStyle(element).backgroundColor;
  const [r = 0, g = 0, b = 0] = [...painted.matchAll(/[\d.]+/g)].map(Number);
  return (0.2126 * r + 0.7152 * g + 0.0722 * b) / 255;
}
