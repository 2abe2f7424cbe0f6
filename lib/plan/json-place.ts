/** Finds where JSON text stops being valid, since engines word syntax errors differently and often omit the place. */

const SPACE = /[ \t\n\r]*/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON strings may not hold control characters
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const SCALAR = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/** Deeper than any real file: reading stops here. */
const DEEP_ENOUGH = 1000;

type Wants = "value" | "first-value" | "key" | "first-key" | "colon" | "next";

/** Line and column from 1, or undefined when the text ends too early. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** The first place where `source`, known not to be JSON, is wrong. */
export function findSyntaxError(source: string): TextPlace | undefined {
  const reader = new Reader(source);
  while (reader.step());
  if (reader.at >= source.length) return undefined;
  const before = source.slice(0, reader.at);
  return { line: before.split("\n").length, column: before.length - before.lastIndexOf("\n") };
}

class Reader {
  at = 0;
  private readonly open: string[] = [];
  private wants: Wants = "value";

  constructor(private readonly source: string) {}

  /** Reads one token. False when it cannot, or when the text is done. */
  step(): boolean {
    this.skip(SPACE);
    const char = this.source[this.at];
    if (char === undefined || this.open.length > DEEP_ENOUGH) return false;
    switch (this.wants) {
      case "key":
      case "first-key":
        if (char === "}" && this.wants === "first-key") return this.close();
        return this.skip(STRING) > 0 && this.want("colon");
      case "colon":
        return char === ":" && this.take("value");
      case "next":
        return this.next(char);
      default:
        return this.value(char);
    }
  }

  private value(char: string): boolean {
    if (char === "]" && this.wants === "first-value") return this.close();
    if (char === "{" || char === "[") {
      this.open.push(char);
      return this.take(char === "{" ? "first-key" : "first-value");
    }
    return this.skip(char === '"' ? STRING : SCALAR) > 0 && this.want("next");
  }

  private next(char: string): boolean {
    const inside = this.open.at(-1);
    if (inside === undefined) return false;
    if (char === ",") return this.take(inside === "{" ? "key" : "value");
    return char === (inside === "{" ? "}" : "]") && this.close();
  }

  private close(): boolean {
    this.open.pop();
    return this.take("next");
  }

  private take(wants: Wants): boolean {
    this.at++;
    return this.want(wants);
  }

  private want(wants: Wants): boolean {
    this.wants = wants;
    return true;
  }

  private skip(pattern: RegExp): number {
    pattern.lastIndex = this.at;
    const length = pattern.exec(this.source)?.[0].length ?? 0;
    this.at += length;
    return length;
  }
}
