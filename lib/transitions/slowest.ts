/**
 * How much longer a change takes for a room than for one person: everybody waits for the slowest. One person's seconds
 * scatter by `equipment.spreadShare` of their mean, about normally, so the slowest of n people takes the mean times
 * 1 + spreadShare x e(n), where e(n) is the expected largest of n standard normal values.
 */
import type { Plan } from "#lib/plan/schema.ts";

/** Standard deviation of one person's seconds, as a share of them (common practice, no source). */
export const SPREAD_SHARE = 0.15;

/** As many as a plan file allows. */
export const MOST_PEOPLE = 60;

/**
 * e(1) to e(60), the integral of x n phi(x) Phi(x)^(n - 1), to seven decimals. Published to five and more in D. Teichroew,
 * "Tables of expected values of order statistics", 1956, and H. L. Harter, "Expected values of normal order statistics", 1961.
 */
const EXPECTED_LARGEST: readonly number[] = [
  0, 0.5641896, 0.8462844, 1.0293754, 1.1629645, 1.2672064, 1.3521784, 1.4236003, 1.4850132, 1.5387527, 1.5864364,
  1.6292276, 1.6679902, 1.7033816, 1.7359134, 1.7659914, 1.793942, 1.8200319, 1.8444815, 1.8674751, 1.8891679,
  1.9096923, 1.9291617, 1.9476741, 1.9653146, 1.9821578, 1.9982693, 2.0137069, 2.0285221, 2.0427608, 2.0564641,
  2.0696688, 2.0824083, 2.0947128, 2.1066094, 2.1181233, 2.129277, 2.1400915, 2.1505857, 2.1607772, 2.1706822,
  2.1803156, 2.1896913, 2.1988219, 2.2077196, 2.2163952, 2.2248591, 2.2331209, 2.2411896, 2.2490736, 2.2567809,
  2.2643187, 2.2716941, 2.2789136, 2.2859833, 2.2929091, 2.2996964, 2.3063505, 2.3128762, 2.3192782,
];

/** e(n) in standard deviations. A damaged plan may have any number: it counts as the nearest whole one from 1 to 60. */
export function expectedLargest(n: number): number {
  const people = Math.min(Math.max(Math.round(n), 1), MOST_PEOPLE);
  return EXPECTED_LARGEST[people - 1] ?? 0;
}

/** One person's seconds times this are those of the slowest in the room; 1 for one person. */
export function slowestFactor({ people = 1, equipment }: Pick<Plan, "people" | "equipment">): number {
  return 1 + (equipment.spreadShare ?? SPREAD_SHARE) * expectedLargest(people);
}
