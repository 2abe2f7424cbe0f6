/**
 * A straight line by ordinary least squares, with or without an intercept, and its residuals. Sums are taken about the
 * means, so that large travels with small differences keep their precision.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface SpringLine {
  readonly slope: number;
  /** 0 when the line goes through the origin. */
  readonly intercept: number;
  readonly residuals: readonly number[];
  /** The leverage of each point, 0..1. */
  readonly leverages: readonly number[];
  readonly residualSumOfSquares: number;
  readonly residualSd: number;
  /** Through the origin it is of the sum of squares about 0, as is usual there. */
  readonly rSquared: number;
  readonly sdSlope: number;
  readonly sdIntercept: number;
}

/** y = intercept + slope x. Needs two different x; for the SDs three points. */
export function leastSquaresLine(points: readonly Point[]): SpringLine {
  const n = points.length;
  const mx = mean(points.map((p) => p.x));
  const my = mean(points.map((p) => p.y));
  const sxx = sum(points.map((p) => (p.x - mx) ** 2));
  const slope = sum(points.map((p) => (p.x - mx) * (p.y - my))) / sxx;
  const residuals = points.map((p) => p.y - my - slope * (p.x - mx));
  const rss = sumOfSquares(residuals);
  const sd = Math.sqrt(rss / (n - 2));
  return {
    slope,
    intercept: my - slope * mx,
    residuals,
    leverages: points.map((p) => 1 / n + (p.x - mx) ** 2 / sxx),
    residualSumOfSquares: rss,
    residualSd: sd,
    rSquared: 1 - rss / sum(points.map((p) => (p.y - my) ** 2)),
    sdSlope: sd / Math.sqrt(sxx),
    sdIntercept: sd * Math.sqrt(1 / n + mx ** 2 / sxx),
  };
}

/** y = slope x. Needs one x other than 0; for the SD two points. */
export function lineThroughOrigin(points: readonly Point[]): SpringLine {
  const sxx = sum(points.map((p) => p.x ** 2));
  const slope = sum(points.map((p) => p.x * p.y)) / sxx;
  const residuals = points.map((p) => p.y - slope * p.x);
  const rss = sumOfSquares(residuals);
  const sd = Math.sqrt(rss / (points.length - 1));
  return {
    slope,
    intercept: 0,
    residuals,
    leverages: points.map((p) => p.x ** 2 / sxx),
    residualSumOfSquares: rss,
    residualSd: sd,
    rSquared: 1 - rss / sumOfSquares(points.map((p) => p.y)),
    sdSlope: sd / Math.sqrt(sxx),
    sdIntercept: 0,
  };
}

/** The sum of squares left when the line may also bend (a term in x²). */
export function residualSumOfSquaresBent(
  points: readonly Point[],
  line: SpringLine,
  drawLine: typeof leastSquaresLine,
): number {
  const mx = mean(points.map((p) => p.x));
  const bend = drawLine(points.map((p) => ({ x: p.x, y: (p.x - mx) ** 2 }))).residuals;
  const ofBend = sumOfSquares(bend);
  const along = sum(bend.map((b, i) => b * (line.residuals[i] ?? 0)));
  return ofBend > 0 ? Math.max(0, line.residualSumOfSquares - along ** 2 / ofBend) : line.residualSumOfSquares;
}

/** The sum of squares left when one point is left out. */
export function residualSumOfSquaresWithout(line: SpringLine, index: number): number {
  return Math.max(0, line.residualSumOfSquares - offLine(line, index) ** 2);
}

/**
 * How far a point is off the line, comparable between points: the residual divided by sqrt(1 - leverage) has the spread of
 * the measurement wherever the point is (Cook and Weisberg, Residuals and Influence in Regression, 1982).
 */
export const offLine = (line: SpringLine, index: number): number =>
  (line.residuals[index] ?? 0) / Math.sqrt(Math.max(Number.EPSILON, 1 - (line.leverages[index] ?? 0)));

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
const sumOfSquares = (list: readonly number[]): number => list.reduce((a, b) => a + b * b, 0);

/** A second pass removes the rounding error of the first. */
function mean(list: readonly number[]): number {
  const first = sum(list) / list.length;
  return first + sum(list.map((x) => x - first)) / list.length;
}
