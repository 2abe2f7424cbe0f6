/** Reads the metrics of a running server as a collector does: over HTTP, through a parser that is not ours. */
import parsePrometheusTextFormat, { type ParsedFamily } from "parse-prometheus-text-format";

export interface Scraped {
  readonly text: string;
  readonly families: readonly ParsedFamily[];
  /** The value of the first series with these labels; 0 where there is none. A histogram has `_count`, `_sum`, `_bucket`. */
  value(name: string, labels?: Readonly<Record<string, string>>): number;
  /** How many series of our own there are. */
  readonly series: number;
}

export async function scrape(port: number): Promise<Scraped> {
  const answer = await fetch(`http://127.0.0.1:${port}/metrics`);
  const type = answer.headers.get("content-type") ?? "";
  if (answer.status !== 200 || !type.startsWith("text/plain; version=0.0.4"))
    throw new Error(`no metrics: ${answer.status} ${type}`);
  const text = await answer.text();
  // The parser makes one of all series of a histogram. Read without their type, all stand for themselves.
  const families = parsePrometheusTextFormat(text.replace(/^# TYPE \S+ histogram$/gm, ""));
  return {
    text,
    families,
    series: text.match(/^springline_/gm)?.length ?? 0,
    value(name, labels = {}) {
      const found = families
        .filter((one) => one.name === name)
        .flatMap((one) => one.metrics)
        .find((one) => Object.entries(labels).every(([label, value]) => one.labels?.[label] === value));
      return Number(found?.value ?? 0);
    },
  };
}
