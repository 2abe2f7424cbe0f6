/** The canonical form that is hashed and signed, against the published rows and samples of RFC 8785 (3.2.2-3.2.4, appendix B). */
import { describe, expect, test } from "vitest";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import fixture from "#tests/fixtures/rfc8785-canonical.json" with { type: "json" };

const double = (hex: string) => Buffer.from(hex, "hex").readDoubleBE();

describe("RFC 8785", () => {
  test.each(fixture.numbers)("number $ieee754_hex $note", ({ ieee754_hex, json }) => {
    const value = double(ieee754_hex);
    if (json === null) expect(() => canonicalJson({ value })).toThrow();
    else expect(canonicalJson([value])).toBe(`[${json}]`);
  });

  test("the sample object, to the byte", () => {
    const text = canonicalJson(JSON.parse(fixture.sample_input_text));
    expect(text).toBe(fixture.sample_canonical_text);
    expect(Buffer.from(text).toString("hex")).toBe(fixture.sample_canonical_utf8_hex.replaceAll(" ", ""));
  });

  test("keys sort by UTF-16 code units", () => {
    const text = canonicalJson(fixture.sort_example_input);
    // Looked for in the text: an object made from it would put the key "1" first.
    const found = Object.values(fixture.sort_example_input).sort((a, b) => text.indexOf(a) - text.indexOf(b));
    expect(found).toEqual(fixture.sort_example_value_order);
  });
});
