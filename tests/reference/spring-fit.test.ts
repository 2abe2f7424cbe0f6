/**
 * The spring fit against certified values of the NIST Statistical Reference Datasets, linear regression (Norris,
 * NoInt1, NoInt2; certified to 15 digits by multiple-precision arithmetic; itl.nist.gov/div898/strd). Agreement is
 * measured as the log relative error, -log10(|computed - certified| / |certified|): the number of right digits.
 */
import { describe, expect, it } from "vitest";
import { fitSpring, type SpringReading } from "#lib/springs/spring-fit.ts";

/** At least this many digits must be right (double precision has 15 to 16). */
const DIGITS = 9;

function expectDigits(computed: number, certified: number): void {
  const digits = computed === certified ? 15 : -Math.log10(Math.abs(computed - certified) / Math.abs(certified));
  expect(Math.min(15, digits), `${computed} against ${certified}`).toBeGreaterThanOrEqual(DIGITS);
}

const readings = (pairs: readonly (readonly [number, number])[]): SpringReading[] =>
  pairs.map(([travelMm, newtons]) => ({ travelMm, newtons }));

/** Calibration of ozone monitors: x is the customer's, y NIST's own measurement. */
const norris = readings([
  [0.2, 0.1],
  [337.4, 338.8],
  [118.2, 118.1],
  [884.6, 888.0],
  [10.1, 9.2],
  [226.5, 228.1],
  [666.3, 668.5],
  [996.3, 998.5],
  [448.6, 449.1],
  [777.0, 778.9],
  [558.2, 559.2],
  [0.4, 0.3],
  [0.6, 0.1],
  [775.5, 778.1],
  [666.9, 668.8],
  [338.0, 339.3],
  [447.5, 448.9],
  [11.6, 10.8],
  [556.0, 557.7],
  [228.1, 228.3],
  [995.8, 998.0],
  [887.6, 888.8],
  [120.2, 119.6],
  [0.3, 0.3],
  [0.3, 0.6],
  [556.8, 557.6],
  [339.1, 339.3],
  [887.2, 888.0],
  [999.0, 998.5],
  [779.0, 778.9],
  [11.1, 10.2],
  [118.3, 117.6],
  [229.2, 228.9],
  [669.1, 668.4],
  [448.9, 449.2],
  [0.5, 0.2],
]);

describe("NIST StRD", () => {
  it("Norris: slope, intercept, their standard deviations, residual SD and R squared", () => {
    const fit = fitSpring(norris);
    if (!fit.ok) throw new Error(fit.say);
    expectDigits(fit.preloadN, -0.262323073774029);
    expectDigits(fit.stiffnessNPerMm, 1.00211681802045);
    expectDigits(fit.sdPreload, 0.232818234301152);
    expectDigits(fit.sdStiffness, 0.429796848199937e-3);
    expectDigits(fit.residualSdN, 0.884796396144373);
    expectDigits(fit.rSquared, 0.999993745883712);
    expectDigits(
      fit.residualsN.reduce((s, r) => s + r * r, 0),
      26.6173985294224,
    );
    expect(fit.straight).toBe(true);
  });

  it("NoInt1: a line held to the origin", () => {
    const pairs = Array.from({ length: 11 }, (_, i) => [60 + i, 130 + i] as const);
    const fit = fitSpring(readings(pairs), { preload: "none" });
    if (!fit.ok) throw new Error(fit.say);
    expectDigits(fit.stiffnessNPerMm, 2.07438016528926);
    expectDigits(fit.sdStiffness, 0.165289256198347e-1);
    expectDigits(fit.residualSdN, 3.56753034006338);
    expectDigits(fit.rSquared, 0.999365492298663);
    expect(fit.preloadN).toBe(0);
  });

  it("NoInt2: three readings, a line held to the origin", () => {
    const fit = fitSpring(
      readings([
        [4, 3],
        [5, 4],
        [6, 4],
      ]),
      { preload: "none" },
    );
    if (!fit.ok) throw new Error(fit.say);
    expectDigits(fit.stiffnessNPerMm, 0.727272727272727);
    expectDigits(fit.sdStiffness, 0.420827318078432e-1);
    expectDigits(fit.residualSdN, 0.369274472937998);
    expectDigits(fit.rSquared, 0.993348115299335);
  });
});
