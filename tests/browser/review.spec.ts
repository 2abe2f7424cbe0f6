/** What a lead reads before signing: the whole class on one page, in the words that will be said. */
import { expect, openPlan, test } from "./kit.ts";

for (const [name, width, height] of [
  ["phone", 390, 844],
  ["tablet", 1180, 820],
  ["laptop", 1440, 900],
] as const)
  test(`on a ${name} the whole class can be read, with every live field filled in`, async ({ as }) => {
    const ines = await as("ines", { viewport: { width, height } });
    await openPlan(ines, "Arms and chest, first try");
    await ines.getByRole("button", { name: "Review and sign" }).click();
    const list = ines.getByRole("dialog", { name: "Review and sign" }).getByRole("list", { name: "Item by item" });
    await expect(list).toContainText("heads-up");
    for (const end of ["Opening", "Closing"]) await expect(list).toContainText(new RegExp(`${end}\\d+ s`));
    await expect(ines.getByRole("dialog", { name: "Review and sign" })).toContainText("theme");
    expect(await list.textContent()).not.toMatch(/\{[a-z-]+\}/);
    const box = await list.evaluate((element) => ({
      cut: element.scrollHeight - element.clientHeight,
      wide: document.documentElement.scrollWidth - innerWidth,
      share: (element.closest("dialog")?.clientHeight ?? 0) / innerHeight,
    }));
    expect(box.cut, "the list has no window of its own").toBeLessThanOrEqual(1);
    expect(box.wide).toBeLessThanOrEqual(0);
    expect(box.share, "the dialog has the screen's height").toBeGreaterThan(0.9);
    const shots = process.env.SPRINGLINE_SHOTS;
    if (shots) await ines.screenshot({ path: `${shots}/review-${name}.png` });
  });
