/**
 * A month to fill as a mixed-integer program, for a solver: one binary a slot and choice, and for each part of the cost a
 * table of what its slots have together (its marginals are the choices). Choices that make no difference to a part share a
 * row. A part that would need too large a table is left out, so that the program's least cost is a lower bound; `cutOff`
 * then adds the very combinations that a solution ran into.
 */
import type { CostPart, Picks } from "./parts.ts";
import { type FillProblem, product } from "./problem.ts";
import { tabulated } from "./tables.ts";

/** Columns are from 0 to `most`. */
export interface FillProgram {
  readonly columns: readonly { readonly cost: number; readonly most: number; readonly whole: boolean }[];
  readonly rows: readonly ProgramRow[];
  /** Column of the first choice of each slot; its other choices follow. */
  readonly first: readonly number[];
}
export interface ProgramRow {
  readonly least: number;
  readonly most: number;
  readonly entries: readonly (readonly [column: number, value: number])[];
}

/** Of tables that are worked out, and of what is left of one when equal choices are put together. */
const TABLE_MOST = 50_000;
const COLUMNS_MOST = 700;

export class ProgramMaker {
  private readonly columns: { cost: number; most: number; whole: boolean }[] = [];
  private readonly rows: ProgramRow[] = [];
  private readonly first: number[] = [];
  /** Parts that are not in the program, or only in some combinations. */
  private readonly loose: CostPart[] = [];

  constructor(private readonly problem: FillProblem) {
    this.addChoices();
    this.addUses();
    for (const part of joined(problem.parts)) this.addPart(part);
  }

  made = (): FillProgram => ({ columns: this.columns, rows: this.rows, first: this.first });

  /** Adds what the choices run into and the program does not know. False when it knows all that they cost. */
  cutOff(picks: Picks): boolean {
    const met = this.loose.filter((part) => part.cost(picks) > 0);
    for (const part of met) this.addCombination(part, picks);
    return met.length > 0;
  }

  private addChoices(): void {
    const { sizes, uses } = this.problem;
    for (const [slot, size] of sizes.entries()) {
      this.first.push(this.columns.length);
      for (let pick = 0; pick < size; pick++) {
        const plan = uses.planOf[slot]?.[pick] ?? -1;
        this.columns.push({ cost: 0, most: plan >= 0 && uses.room[plan] === 0 ? 0 : 1, whole: true });
      }
      this.rows.push({ least: 1, most: 1, entries: picksOf(size).map((pick) => [this.choice(slot, pick), 1]) });
    }
  }

  private choice = (slot: number, pick: number): number => (this.first[slot] ?? 0) + pick;

  private addUses(): void {
    const { uses } = this.problem;
    for (const [plan, most] of uses.room.entries()) {
      const entries = uses.planOf.flatMap((plans, slot) => {
        const pick = plans.indexOf(plan);
        return pick < 0 ? [] : [[this.choice(slot, pick), 1] as const];
      });
      if (entries.length > most) this.rows.push({ least: 0, most, entries });
    }
  }

  private addPart(part: CostPart): void {
    const { sizes } = this.problem;
    const own = part.scope.map((i) => sizes[i] ?? 1);
    if (product(own) > TABLE_MOST) {
      this.loose.push(part);
      return;
    }
    const table = tabulated(part.cost, part.scope, sizes);
    if (table.every((cost) => cost === 0)) return;
    if (own.length === 1) this.addAlone(part.scope[0] ?? 0, table);
    else {
      const classes = own.map((_, k) => classesIn(table, own, k));
      if (product(classes.map(({ length }) => length)) > COLUMNS_MOST) this.loose.push(part);
      else this.addTable(part.scope, { table, own, classes });
    }
  }

  private addAlone(slot: number, costs: Float64Array): void {
    for (const [pick, cost] of costs.entries()) {
      const column = this.columns[this.choice(slot, pick)];
      if (column) column.cost += cost;
    }
  }

  private addTable(scope: readonly number[], { table, own, classes }: SharedTable): void {
    const rows = classes.map((list) => list.map((): [number, number][] => []));
    for (const combination of combinationsOf(classes.map(({ length }) => length))) {
      const picks = combination.map((c, k) => classes[k]?.[c]?.[0] ?? 0);
      const column = this.columns.length;
      this.columns.push({ cost: table[placeOf(picks, own)] ?? 0, most: 1, whole: false });
      for (const [k, c] of combination.entries()) rows[k]?.[c]?.push([column, 1]);
    }
    for (const [k, list] of classes.entries()) {
      for (const [c, picks] of list.entries()) {
        const chosen = picks.map((pick): [number, number] => [this.choice(scope[k] ?? 0, pick), -1]);
        this.rows.push({ least: 0, most: 0, entries: [...(rows[k]?.[c] ?? []), ...chosen] });
      }
    }
  }

  /** "All of these together cost it": widened to every choice with which they still do. */
  private addCombination(part: CostPart, picks: Picks): void {
    const sets = widened(part, picks, this.problem.sizes);
    const column = this.columns.length;
    this.columns.push({ cost: part.flat ?? part.cost(picks), most: 1, whole: false });
    const entries = sets.flatMap((set, k) =>
      set.map((pick): [number, number] => [this.choice(part.scope[k] ?? 0, pick), 1]),
    );
    this.rows.push({
      least: Number.NEGATIVE_INFINITY,
      most: part.scope.length - 1,
      entries: [...entries, [column, -1]],
    });
  }
}

interface SharedTable {
  readonly table: Float64Array;
  readonly own: readonly number[];
  /** For each slot of the scope: choices that cost the same whatever the others are. */
  readonly classes: readonly (readonly (readonly number[])[])[];
}

const picksOf = (size: number): number[] => [...Array(size).keys()];

/** Parts of the same two slots become one; others stay apart, since each distinguishes few choices. */
function joined(parts: readonly CostPart[]): CostPart[] {
  const small = new Map<string, CostPart[]>();
  for (const part of parts) {
    if (part.scope.length > 2) continue;
    const key = part.scope.join();
    small.set(key, [...(small.get(key) ?? []), part]);
  }
  const one = [...small.values()].map((same): CostPart => {
    const cost = (picks: Picks): number => same.reduce((sum, part) => sum + part.cost(picks), 0);
    return { scope: same[0]?.scope ?? [], cost };
  });
  return [...one, ...parts.filter(({ scope }) => scope.length > 2)];
}

const placeOf = (picks: readonly number[], own: readonly number[]): number =>
  picks.reduce((place, pick, k) => place * (own[k] ?? 1) + pick, 0);

/** Choices of the k-th slot, those together with which everything costs the same. */
function classesIn(table: Float64Array, own: readonly number[], k: number): number[][] {
  const size = own[k] ?? 1;
  const after = product(own.slice(k + 1));
  const classes = new Map<string, number[]>();
  for (let pick = 0; pick < size; pick++) {
    const costs: number[] = [];
    for (let before = 0; before < table.length; before += size * after) {
      for (let i = 0; i < after; i++) costs.push(table[before + pick * after + i] ?? 0);
    }
    const key = costs.join();
    classes.set(key, [...(classes.get(key) ?? []), pick]);
  }
  return [...classes.values()];
}

function combinationsOf(sizes: readonly number[]): number[][] {
  return sizes.reduce<number[][]>((all, size) => all.flatMap((some) => picksOf(size).map((i) => [...some, i])), [[]]);
}

const WIDENED_MOST = 20_000;

function widened(part: CostPart, picks: Picks, sizes: readonly number[]): number[][] {
  const sets = part.scope.map((slot) => [picks[slot] ?? 0]);
  const tried = picks.slice();
  for (const [k, slot] of part.scope.entries()) {
    for (const pick of picksOf(sizes[slot] ?? 0)) {
      if (pick === picks[slot]) continue;
      const all = sets.map((set, j) => (j === k ? [pick] : set));
      if (product(all.map(({ length }) => length)) > WIDENED_MOST) break;
      const costs = combinationsOf(all.map(({ length }) => length)).every((combination) => {
        for (const [j, at] of combination.entries()) tried[part.scope[j] ?? 0] = all[j]?.[at] ?? 0;
        return part.cost(tried) > 0;
      });
      if (costs) sets[k]?.push(pick);
    }
  }
  return sets;
}
