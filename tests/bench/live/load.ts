/** The load, in its own process. Its parent tells it what to do and what the server costs; it reports the figures. */
import { readFileSync } from "node:fs";
import type { Cost, CostQuestion } from "./child.ts";
import { monthFileBeside } from "./months.ts";
import type { Door } from "./raw-page.ts";
import type { Numbers, Sizes } from "./work.ts";
import { WORKS } from "./works.ts";

export interface Wanted extends Sizes {
  readonly work: string;
  readonly door: Door;
  /** File of the update that every plan begins with. */
  readonly baseFile: string;
}
export type Said = { readonly ask: CostQuestion } | { readonly figures: Numbers } | { readonly failed: string };

const say = (said: Said) => process.send?.(said);

function cost(question: CostQuestion): Promise<Cost> {
  say({ ask: question });
  return new Promise((resolve) => process.once("message", (told) => resolve(told as Cost)));
}

process.once("message", async (told) => {
  const { work: name, baseFile, ...rest } = told as Wanted;
  try {
    const work = WORKS.find((one) => one.name === name);
    if (!work) throw new Error(`there is no work "${name}"`);
    say({
      figures: await work.run({
        ...rest,
        base: readFileSync(baseFile),
        month: readFileSync(monthFileBeside(baseFile)),
        cost,
      }),
    });
  } catch (error) {
    say({ failed: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
process.on("disconnect", () => process.exit(0));
