/** The integer program of a fill, solved by HiGHS: one thread, a fixed seed, and limits that count nodes instead of time. */
import loadHighs, { type Highs, type ModelData } from "highs";
import type { FillProgram } from "#lib/month/fill/program.ts";

let loading: Promise<Highs> | undefined;
/** Loaded once, when it is first needed: it takes some megabytes. */
export const solver = (): Promise<Highs> => {
  loading ??= loadHighs();
  return loading;
};

export interface Solved {
  /** Value of each column; undefined when none was found. */
  readonly values: Float64Array | undefined;
  /** No solution costs less. */
  readonly bound: number;
}

const MOST_NODES = 2_000;

/** `start`: columns that are 1 in a known solution. */
export function solveProgram(highs: Highs, program: FillProgram, start: readonly number[]): Solved {
  return highs.withModel(modelOf(highs, program), (model): Solved => {
    model.options.set({
      output_flag: false,
      random_seed: 1,
      mip_rel_gap: 0,
      // Costs are whole numbers: nothing lies between two of them.
      mip_abs_gap: 0.5,
      mip_max_nodes: MOST_NODES,
      // A good filling is known: the time goes into the proof.
      mip_heuristic_effort: 0.01,
      mip_detect_symmetry: false,
    });
    model.setSolution({
      indices: Int32Array.from(start),
      values: new Float64Array(start.length).fill(1),
    });
    model.run();
    const bound = Number(model.info.get("mip_dual_bound"));
    const found = Number(model.info.get("primal_solution_status")) === 2;
    return { values: found ? Float64Array.from(model.getSolution().colValue ?? []) : undefined, bound };
  });
}

export function modelOf({ constants, infinity }: Highs, { columns, rows }: FillProgram): ModelData {
  const { continuous, integer } = constants.variableType;
  const starts = [0];
  for (const { entries } of rows) starts.push((starts.at(-1) ?? 0) + entries.length);
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: columns.map(({ cost }) => cost),
    colLower: columns.map(() => 0),
    colUpper: columns.map(({ most }) => most),
    integrality: columns.map(({ whole }) => (whole ? integer : continuous)),
    rowLower: rows.map(({ least }) => Math.max(least, -infinity)),
    rowUpper: rows.map(({ most }) => most),
    matrix: {
      format: "csr",
      numRows: rows.length,
      numCols: columns.length,
      starts,
      indices: rows.flatMap(({ entries }) => entries.map(([column]) => column)),
      values: rows.flatMap(({ entries }) => entries.map(([, value]) => value)),
    },
  };
}
