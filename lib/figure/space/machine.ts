/**
 * The machine of the figures, seen from the side: a carriage on two rails between a front and a back platform. Springs draw
 * the carriage home to the front; the cables of handles and straps come from the back. Metres. Every number is assumed for
 * the drawing and taken from no maker's machine. x = 0 is the carriage's front edge at home.
 */
import type { Vec } from "./vector.ts";

type Span = readonly [from: number, to: number];

export const MACHINE = {
  platformTop: 0.44,
  carriageTop: 0.37,
  slab: 0.046,
  railTop: 0.3,
  halfWidth: 0.28,
  /** How far the carriage can go from home. */
  travel: 0.9,
  carriage: [0, 1.3] as Span,
  frontPlatform: [-0.52, -0.01] as Span,
  backPlatform: [2.22, 2.62] as Span,
  /** Two loops at the sides: this far along the rails, this high, this far from the middle. */
  frontBars: [-0.47, -0.08] as Span,
  backBars: [2.28, 2.57] as Span,
  barTop: 0.86,
  barAside: 0.25,
  pulley: [2.6, 0.8, 0.23] as Vec,
  /** Where the springs hang on the frame, and where on the carriage. */
  springFrame: -0.44,
  springCarriage: 0.07,
} as const;

/** The back end is the front end seen in a mirror: x at the one is MIRROR - x at the other. */
export const MIRROR = MACHINE.backPlatform[0] + MACHINE.frontPlatform[1];

export type Surface = "floor" | "carriage" | "front-platform" | "back-platform" | "front-bars" | "back-bars";

/** How high the top of a surface is. */
export function heightOf(surface: Surface): number {
  if (surface === "floor") return 0;
  if (surface === "carriage") return MACHINE.carriageTop;
  return surface.endsWith("bars") ? MACHINE.barTop : MACHINE.platformTop;
}

/** From where to where along the rails a surface reaches, with the carriage `travel` from home. */
export function surfaceSpan(surface: Surface, travel: number): Span {
  switch (surface) {
    case "carriage":
      return [MACHINE.carriage[0] + travel, MACHINE.carriage[1] + travel];
    case "front-platform":
      return MACHINE.frontPlatform;
    case "back-platform":
      return MACHINE.backPlatform;
    case "front-bars":
      return MACHINE.frontBars;
    case "back-bars":
      return MACHINE.backBars;
    default:
      return [-4, 6];
  }
}

const DECKS = ["front-platform", "carriage", "back-platform"] as const;

/** The height of what lies under a point: a deck, or the floor beside and between them. */
export function groundAt(x: number, z: number, travel: number): number {
  if (Math.abs(z) > MACHINE.halfWidth) return 0;
  const deck = DECKS.find((surface) => {
    const [from, to] = surfaceSpan(surface, travel);
    return x >= from && x <= to;
  });
  return deck ? heightOf(deck) : 0;
}
