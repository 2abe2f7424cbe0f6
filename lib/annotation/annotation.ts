/**
 * Threads as W3C Web Annotations: "Web Annotation Data Model", W3C Recommendation 23 February 2017, as one collection with one
 * page in it. A first comment is an annotation of what it is about, a reply an annotation of the comment that began the thread.
 */
import type { Anchor, CommentView, ThreadView } from "#lib/protocol/messages.ts";

const ANNOTATION_CONTEXT = "http://www.w3.org/ns/anno.jsonld";
/** Section 4 of the Web Annotation Protocol, W3C Recommendation 23 February 2017. */
export const ANNOTATION_TYPE = `application/ld+json; profile="${ANNOTATION_CONTEXT}"`;
/** Fragments of the plan's page, which is HTML (RFC 3236). */
const HTML_FRAGMENTS = "http://tools.ietf.org/rfc/rfc3236";

export interface QuotedWords {
  readonly exact: string;
  /** What stands around the words now; left out when they are not in the script any more. */
  readonly prefix?: string;
  readonly suffix?: string;
}

interface ThreadsToWrite {
  /** Where the studio is reached: "https://studio.example". */
  readonly origin: string;
  readonly planId: string;
  readonly title: string;
  readonly threads: readonly ThreadView[];
  quoteOf(anchor: Extract<Anchor, { kind: "words" }>): QuotedWords;
}

type Json = string | number | readonly Json[] | { readonly [key: string]: Json };

/** Plain data, to be written as JSON-LD. */
export function threadsAsAnnotations(asked: ThreadsToWrite): { readonly [key: string]: Json } {
  const { origin, planId, title, threads } = asked;
  const id = `${origin}/api/plans/${planId}/threads.jsonld`;
  const items = threads.flatMap((thread) => annotationsOf(thread, asked));
  return {
    "@context": ANNOTATION_CONTEXT,
    id,
    type: "AnnotationCollection",
    label: `Threads of ${title === "" ? "a plan" : title}`,
    total: items.length,
    first: { id: `${id}#page-1`, type: "AnnotationPage", partOf: id, startIndex: 0, items },
  };
}

function annotationsOf(thread: ThreadView, asked: ThreadsToWrite): Json[] {
  const [first, ...replies] = thread.comments;
  if (!first) return [];
  const page = `${asked.origin}/plans/${asked.planId}`;
  const iriOf = (comment: CommentView) => `${page}#comment-${comment.id}`;
  const base = (comment: CommentView) => ({
    id: iriOf(comment),
    type: "Annotation",
    created: new Date(comment.at).toISOString(),
    creator: { id: `${asked.origin}/people/${comment.authorId}`, type: "Person", name: comment.authorName },
  });
  const settled = {
    type: "TextualBody",
    purpose: "tagging",
    value: thread.settled ? "settled" : "open",
    format: "text/plain",
  };
  return [
    {
      ...base(first),
      motivation: "commenting",
      body: [bodyOf(first, "commenting"), settled],
      target: targetOf(thread.anchor, page, asked),
    },
    ...replies.map((reply) => ({
      ...base(reply),
      motivation: "replying",
      body: bodyOf(reply, "replying"),
      target: iriOf(first),
    })),
  ];
}

const bodyOf = ({ body }: CommentView, purpose: "commenting" | "replying"): Json => ({
  type: "TextualBody",
  purpose,
  value: body,
  format: "text/plain",
});

function targetOf(anchor: Anchor, page: string, { quoteOf }: ThreadsToWrite): Json {
  switch (anchor.kind) {
    case "plan":
      return page;
    case "words":
      return {
        type: "SpecificResource",
        source: `${page}#${itemFragment(anchor.itemId)}`,
        selector: { type: "TextQuoteSelector", ...quoteOf(anchor) },
      };
    case "item":
      return fragmentOf(page, itemFragment(anchor.itemId));
    case "change":
      return fragmentOf(page, `change-${anchor.itemId}`);
    case "finding":
      return fragmentOf(page, `finding-${encodeURIComponent(anchor.key)}`);
  }
}

/** The id of the item's plate on the plan's page. */
const itemFragment = (itemId: string): string => `rail-${itemId}`;

const fragmentOf = (source: string, value: string): Json => ({
  type: "SpecificResource",
  source,
  selector: { type: "FragmentSelector", conformsTo: HTML_FRAGMENTS, value },
});
