/**
 * Saved threads against "Web Annotation Data Model", W3C Recommendation 23 February 2017, section by section, and with `jsonld`
 * against the standard's context.
 *
 * The context (tests/fixtures/anno-context.json) is that of http://www.w3.org/ns/anno.jsonld: the working group's own file
 * (github.com/w3c/web-annotation, jsonld/anno.jsonld, W3C Software and Document License) with the term "assessing", which the
 * Recommendation's vocabulary adds. It could not be compared with the published file byte for byte. No network is asked.
 */
import { readFileSync } from "node:fs";
import jsonld from "jsonld";
import { describe, expect, it } from "vitest";
import { threadsAsAnnotations } from "#lib/annotation/annotation.ts";
import type { Anchor, ThreadView } from "#lib/protocol/messages.ts";

const CONTEXT = "http://www.w3.org/ns/anno.jsonld";
const context: unknown = JSON.parse(readFileSync(new URL("../../fixtures/anno-context.json", import.meta.url), "utf8"));
const OA = "http://www.w3.org/ns/oa#";
const AT = Date.UTC(2026, 10, 30, 9, 30);

let comments = 0;
const comment = (body: string, authorId = "ines", authorName = "Ines Duarte") => ({
  ...{ id: `c${++comments}`, authorId, authorName, body },
  at: AT + comments * 1000,
});
const thread = (id: string, anchor: Anchor, settled = false, replies = 0): ThreadView => ({
  ...{ id, anchor, settled, leadSpoke: true },
  comments: [
    comment(`On ${anchor.kind}`),
    ...Array.from({ length: replies }, (_, i) => comment(`Reply ${i}`, "jonas", "Jonas “J” \u2028 Lind")),
  ],
});
const THREADS: ThreadView[] = [
  thread("t1", { kind: "plan" }, true, 2),
  thread("t2", { kind: "item", itemId: "m1" }),
  thread("t3", { kind: "words", itemId: "m1", from: "AA==", to: "AA==", quote: "elbows stay close" }, false, 1),
  thread("t4", { kind: "words", itemId: "m1", from: "AA==", to: "AA==", quote: "words that went" }),
  thread("t5", { kind: "change", itemId: "m2" }),
  thread("t6", { kind: "finding", rule: "rushed-change", itemIds: ["m1"], key: "rushed-change:short:m1:left arm" }),
];
type Node = { readonly [key: string]: unknown };
const saved = threadsAsAnnotations({
  origin: "https://tholepin.example",
  planId: "plan-1",
  title: "Pull and press",
  threads: THREADS,
  quoteOf: ({ quote }) =>
    quote.includes("went") ? { exact: quote } : { exact: quote, prefix: "Keep the ", suffix: ", long neck." },
});
const page = saved.first as Node;
const items = page.items as readonly Node[];
const one = <T>(value: T | readonly T[]): readonly T[] => (Array.isArray(value) ? value : [value as T]);
/** RFC 3986 with the letters beyond ASCII of RFC 3987. */
const isIri = (value: unknown): boolean =>
  typeof value === "string" && /^[a-z][a-z0-9+.-]*:[^\s<>"{}|\\^`]+$/i.test(value) && URL.canParse(value);

const documentLoader = async (url: string) => {
  if (url !== CONTEXT) throw new Error(`${url} is not to be fetched`);
  return { contextUrl: undefined, documentUrl: url, document: context };
};
const expanded = () =>
  jsonld.expand(saved as jsonld.JsonLdDocument, { documentLoader, safe: true } as jsonld.Options.Expand);

describe("saved threads, by the model's MUSTs", () => {
  it("3.1 an annotation has the context, exactly one IRI, its type, at least one target", () => {
    expect(saved["@context"]).toBe(CONTEXT);
    expect(new Set(items.map((item) => item.id)).size).toBe(items.length);
    for (const item of items) {
      expect(isIri(item.id)).toBe(true);
      expect(one(item.type)).toContain("Annotation");
      expect(one(item.target).length).toBeGreaterThanOrEqual(1);
      expect("bodyValue" in item).toBe(false); // 3.2.5: never beside a body
    }
  });

  it("3.2.4 a textual body has exactly one value, one format, and a type", () => {
    const bodies = items.flatMap((item) => one(item.body)) as readonly Node[];
    expect(bodies.length).toBe(items.length + THREADS.length);
    for (const body of bodies) {
      expect(one(body.type)).toContain("TextualBody");
      expect(typeof body.value).toBe("string");
      expect(body.format).toBe("text/plain");
    }
  });

  it("3.3.1 and 3.3.2 created is an xsd:dateTime in UTC with Z; a creator has an IRI, a type and a name", () => {
    for (const item of items) {
      expect(item.created).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/);
      const creator = item.creator as Node;
      expect(isIri(creator.id)).toBe(true);
      expect(creator.type).toBe("Person");
      expect(typeof creator.name).toBe("string");
    }
  });

  it("3.3.5 motivations and purposes are the standard's; a reply's target is the comment that it answers", () => {
    const known = ["assessing", "commenting", "editing", "replying", "tagging"];
    for (const item of items) {
      expect(known).toContain(item.motivation);
      for (const { purpose } of one(item.body) as readonly Node[]) expect(known).toContain(purpose);
    }
    const replies = items.filter((item) => item.motivation === "replying");
    expect(replies).toHaveLength(3);
    const first = new Set(items.filter((item) => item.motivation === "commenting").map((item) => item.id));
    for (const reply of replies) expect(first.has(reply.target)).toBe(true);
  });

  it("4 and 4.2 a specific resource has exactly one source IRI; its selector has a type and its parts", () => {
    const targets = items.map((item) => item.target).filter((target): target is Node => typeof target === "object");
    expect(targets).toHaveLength(5);
    for (const target of targets) {
      expect(target.type).toBe("SpecificResource");
      expect(isIri(target.source)).toBe(true);
      const selector = target.selector as Node;
      if (selector.type === "TextQuoteSelector") {
        expect(typeof selector.exact).toBe("string"); // 4.2.4
        for (const around of [selector.prefix, selector.suffix])
          expect(["string", "undefined"]).toContain(typeof around);
      } else {
        expect(selector.type).toBe("FragmentSelector"); // 4.2.1
        expect(typeof selector.value).toBe("string");
        expect(isIri(selector.conformsTo)).toBe(true);
        expect(isIri(`https://tholepin.example/#${selector.value}`)).toBe(true);
      }
    }
    for (const item of items) if (typeof item.target === "string") expect(isIri(item.target)).toBe(true);
  });

  it("5.1 and 5.2 a collection has an IRI, its type and a total; its page an IRI, its type, its collection and the items", () => {
    expect(isIri(saved.id)).toBe(true);
    expect(saved.type).toBe("AnnotationCollection");
    expect(saved.total).toBe(items.length);
    expect(typeof saved.label).toBe("string");
    expect(isIri(page.id)).toBe(true);
    expect(page.type).toBe("AnnotationPage");
    expect(page.partOf).toBe(saved.id);
    expect(page.startIndex).toBe(0);
    expect("@context" in page).toBe(false);
  });

  it("holds for a plan without threads", () => {
    const none = threadsAsAnnotations({
      origin: "https://a.example",
      planId: "p",
      title: "",
      threads: [],
      quoteOf: () => ({ exact: "" }),
    });
    expect(none).toMatchObject({ total: 0, label: "Threads of a plan", first: { items: [] } });
  });
});

describe("saved threads, read as linked data with the standard's context", () => {
  it("lose no term: every key and every motivation becomes an IRI of the vocabulary", async () => {
    const text = JSON.stringify(await expanded());
    for (const term of [
      "hasBody",
      "hasTarget",
      "hasSource",
      "hasSelector",
      "motivatedBy",
      "hasPurpose",
      "exact",
      "prefix",
      "suffix",
    ])
      expect(text, term).toContain(`"${OA}${term}"`);
    for (const motivation of ["commenting", "replying", "tagging"])
      expect(text).toContain(`"@id":"${OA}${motivation}"`);
    for (const type of ["Annotation", "TextualBody", "SpecificResource", "TextQuoteSelector", "FragmentSelector"])
      expect(text).toContain(`"${OA}${type}"`);
    expect(text).toContain('"@type":"http://www.w3.org/2001/XMLSchema#dateTime"');
    expect(text).toContain("http://www.w3.org/ns/activitystreams#OrderedCollectionPage");
  });

  it("come back the same when they are compacted again", async () => {
    const back = (await jsonld.compact(
      await expanded(),
      CONTEXT as unknown as jsonld.ContextDefinition,
      {
        documentLoader,
      } as jsonld.Options.Compact,
    )) as Node;
    expect(back).toEqual(JSON.parse(JSON.stringify(saved)));
  });

  it("are refused by that reading when a key is not of the standard", async () => {
    const odd = { ...saved, settledBySomebody: "x" } as jsonld.JsonLdDocument;
    await expect(jsonld.expand(odd, { documentLoader, safe: true } as jsonld.Options.Expand)).rejects.toThrow();
  });
});
