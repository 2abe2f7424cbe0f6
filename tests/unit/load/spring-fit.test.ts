/** What the spring fit says of readings: which it refuses, when they lie on a line, which one to take again. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitForRoom, fitSpring, type SpringReading } from "#lib/springs/spring-fit.ts";

const at = (...pairs: [number, number][]): SpringReading[] =>
  pairs.map(([travelMm, newtons]) => ({ travelMm, newtons }));
const onLine = (travels: number[], stiffness = 0.12, preload = 9): SpringReading[] =>
  travels.map((travelMm) => ({ travelMm, newtons: preload + stiffness * travelMm }));
/** The readings with one of them off by so many newtons. */
const off = (readings: SpringReading[], index: number, by: number): SpringReading[] =>
  readings.map((r, i) => (i === index ? { ...r, newtons: r.newtons + by } : r));

describe("refused, in one sentence", () => {
  it.each([
    ["two readings", onLine([0, 100]), /three readings/],
    ["no readings", [], /three readings/],
    ["three readings at two travels", at([0, 9], [100, 21], [100, 21.4]), /three different travels/],
    ["a force that falls", at([0, 40], [100, 30], [200, 20]), /does not grow/],
    ["a force that stays", at([0, 40], [100, 40], [200, 40]), /does not grow/],
    ["a number that is none", at([0, 9], [100, Number.NaN], [200, 33]), /Reading 2/],
    ["a force below nothing", at([0, 9], [100, 21], [200, -3]), /Reading 3/],
  ])("%s", (_name, readings, says) => {
    const fit = fitSpring(readings);
    expect(fit.ok).toBe(false);
    expect(fit.say).toMatch(says);
  });
});

describe("readings on a line", () => {
  it("gives back the spring they came from", () => {
    const fit = fitSpring(onLine([0, 150, 300, 450]));
    if (!fit.ok) throw new Error(fit.say);
    expect(fit.stiffnessNPerMm).toBeCloseTo(0.12, 12);
    expect(fit.preloadN).toBeCloseTo(9, 10);
    expect(fit).toMatchObject({ straight: true, doubtful: null });
    expect(fit.say).toBe("The readings lie on a line: 0.120 N per mm, preload 9 N, none off it by more than 0 N.");
  });

  it("takes what the scale itself may be wrong by", () => {
    expect(fitSpring(off(onLine([0, 150, 300, 450]), 1, 0.9))).toMatchObject({ straight: true, doubtful: null });
    expect(fitSpring(off(onLine([0, 150, 300, 450]), 1, 0.9), { scaleErrorN: 0.2 })).toMatchObject({ straight: false });
  });
});

describe("readings off a line", () => {
  it("names the one wrong reading, wherever it is", () => {
    for (let i = 0; i < 6; i++) {
      const fit = fitSpring(off(onLine([0, 90, 180, 270, 360, 450]), i, i % 2 ? -6 : 6));
      expect(fit, fit.say).toMatchObject({ straight: false, doubtful: i });
    }
    expect(fitSpring(off(onLine([0, 150, 300, 450]), 2, 8)).say).toBe(
      "Reading 3 (30 cm, 53 N) is 8 N off the line of the others. Take it again.",
    );
  });

  it("says so in the units of whoever reads", () => {
    // 53 N / 4.448 221 6 N and 300 mm / 25.4 mm: NIST SP 811, B.8.
    const words = { force: "lbf", length: "in" } as const;
    expect(fitSpring(off(onLine([0, 150, 300, 450]), 2, 8), { words }).say).toBe(
      "Reading 3 (11.81 in, 11.91 lbf) is 1.8 lbf off the line of the others. Take it again.",
    );
    expect(fitForRoom(at([100, 4], [200, 16], [300, 28], [400, 40]), { words })).toMatchObject({
      say: "The spring hangs slack for the first 2.6 in. Measure the travel from where it begins to pull.",
    });
  });

  it("of three readings it cannot say which is wrong, and says so", () => {
    const fit = fitSpring(off(onLine([0, 200, 400]), 1, 9));
    expect(fit).toMatchObject({ straight: false, doubtful: null });
    expect(fit.say).toMatch(/three are too few/);
  });

  it("blames no reading for a spring that bends, and says which way", () => {
    const travels = [0, 90, 180, 270, 360, 450];
    const bent = (by: number) => onLine(travels, 0.2).map((r) => ({ ...r, newtons: r.newtons + by * r.travelMm ** 2 }));
    expect(fitSpring(bent(0.0002))).toMatchObject({ straight: false, doubtful: null, say: /stiffer/ });
    expect(fitSpring(bent(-0.0002))).toMatchObject({ straight: false, doubtful: null, say: /softer/ });
  });

  it("of four readings, a wrong one at an end looks like a bend: both are said, and the reading is named", () => {
    const fit = fitSpring(off(onLine([0, 150, 300, 450]), 3, 12));
    expect(fit).toMatchObject({ straight: false, doubtful: 3 });
    expect(fit.say).toMatch(/Reading 4|reading 4/);
  });

  it("blames no reading when several are wrong", () => {
    const fit = fitSpring(off(off(off(onLine([0, 90, 180, 270, 360, 450]), 1, 9), 3, -9), 4, 8));
    expect(fit).toMatchObject({ straight: false, doubtful: null });
    expect(fit.say).toMatch(/no single one/);
  });

  it("property: one gross error among readings on a line is always the one named", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 45 }), { minLength: 5, maxLength: 9 }),
        fc.nat(8),
        fc.integer({ min: 8, max: 30 }),
        fc.boolean(),
        (tens, which, by, up) => {
          const travels = tens.map((t) => t * 10);
          const index = which % travels.length;
          const fit = fitSpring(off(onLine(travels, 0.4, 40), index, up ? by : -by));
          if (fit.ok && !fit.straight) expect(fit.doubtful).toBe(index);
        },
      ),
    );
  });
});

describe("preload below 0", () => {
  const slightly = at([100, 11.5], [200, 24], [300, 35.6], [400, 48.1]);
  it("is none when the readings cannot tell it from none", () => {
    const free = fitSpring(slightly);
    expect(free.ok && free.preloadN).toBeLessThan(0);
    expect(free.say).toMatch(/counts as none\.$/);
    expect(fitForRoom(slightly)).toMatchObject({ ok: true, preloadN: 0, straight: true });
  });
  it("otherwise the spring hangs slack, and the travel is to be measured afresh", () => {
    const slack = at([100, 4], [200, 16], [300, 28], [400, 40]);
    expect(fitSpring(slack).say).toMatch(/slack for the first 6\.7 cm/);
    expect(fitForRoom(slack)).toMatchObject({ ok: false });
  });
  it("a preload above 0 is left as it is", () => {
    expect(fitForRoom(onLine([0, 100, 200]))).toEqual(fitSpring(onLine([0, 100, 200])));
  });
});
