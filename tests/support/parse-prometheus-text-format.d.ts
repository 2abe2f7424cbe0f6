/** The part of `parse-prometheus-text-format` that the tests use. It gives every number as text. */
declare module "parse-prometheus-text-format" {
  export interface ParsedFamily {
    readonly name: string;
    readonly help: string;
    readonly type: "COUNTER" | "GAUGE" | "HISTOGRAM" | "SUMMARY" | "UNTYPED";
    readonly metrics: readonly {
      readonly labels?: Readonly<Record<string, string>>;
      readonly value?: string;
    }[];
  }
  export default function parsePrometheusTextFormat(text: string): ParsedFamily[];
}
