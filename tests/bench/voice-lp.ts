/**
 * Which lines of a span are said, written for a mixed-integer solver: a binary for "is said", a start in tenths of a
 * second, and for each two lines a binary for "comes before", with as large a number as their windows need (the disjunctive
 * form of Manne, "On the job-shop scheduling problem", Operations Research 8(2), 1960, from memory).
 */
import type { Spoken } from "#lib/cues/said-order.ts";

/** In CPLEX LP format; its optimum is the worth of the lines that are said. */
export function voiceLp(lines: readonly Spoken[]): string {
  const all = lines.map((line, n) => ({ ...line, n }));
  const pairs = all.flatMap((a) => all.filter((b) => a.n < b.n).map((b) => ({ a, b, name: `o${a.n}_${b.n}` })));
  const last = Math.max(1, ...lines.map((line) => line.latest));
  const apart = pairs.flatMap(({ a, b, name }) => {
    const most = last + Math.max(a.length, b.length);
    // If both are said in this order, one ends before the other begins; otherwise the large number relaxes this.
    return [
      `f${name}: b${b.n} - b${a.n} - ${most} ${name} - ${most} s${a.n} - ${most} s${b.n} >= ${a.length - 3 * most}`,
      `g${name}: b${a.n} - b${b.n} + ${most} ${name} - ${most} s${a.n} - ${most} s${b.n} >= ${b.length - 2 * most}`,
    ];
  });
  const waits = all.flatMap(({ n, after }) => after.map((first) => ({ n, first })));
  return [
    `Maximize\nobj: ${all.map(({ n, worth }) => `+ ${worth} s${n}`).join(" ")}`,
    "Subject To",
    ...apart,
    ...waits.map(({ n, first }) =>
      first < n ? `w${n}_${first}: o${first}_${n} = 1` : `w${n}_${first}: o${n}_${first} = 0`,
    ),
    ...all.flatMap(({ n, latest, length, earliest }) => (latest - length < earliest ? [`never${n}: s${n} = 0`] : [])),
    "Bounds",
    ...all.map(({ n, earliest, latest, length }) => `${earliest} <= b${n} <= ${Math.max(earliest, latest - length)}`),
    `Binaries\n${[...all.map(({ n }) => `s${n}`), ...pairs.map(({ name }) => name)].join("\n")}\nEnd`,
  ].join("\n");
}
