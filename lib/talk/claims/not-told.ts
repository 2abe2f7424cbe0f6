/** Words by which a phrase that sounds like a claim is none: it is denied, supposed, or about another day or somebody else. */

const DENIED = /\b(?:not|never|no|nor|without|hardly|nowhere near|far from|forget|ignore|instead of)(?: [a-z]+){0,4} $/;
const SUPPOSED =
  /\b(?:if|when|whenever|until|till|til|once|unless|imagine|pretend|suppose|as if|as though|by the time|whether|every time|each time|before|than|like|until i say|i say|i call|you hear|say|ask for)\b/;
const ANOTHER_DAY =
  /\b(?:yesterday|tomorrow|ago|used to|(?:i|we|you|who) remembers?|(?:last|next) (?:week|time(?! (?:through|round|around|at (?:it|this)|(?:that )?(?:we|you) (?:will )?(?:do|see|meet)\b))|month|year|class|lesson|session|night|term|monday|tuesday|wednesday|thursday|friday|saturday|sunday)|was|were|did|said|told|we had|you had|i had)\b/;
const SOMEBODY_ELSE = /\b(?:(?<!\bclock )says|he|she|they|his|her|their|someone|somebody|anybody)\b/;
const isElsewhere = (clause: string): boolean => ANOTHER_DAY.test(clause) || SOMEBODY_ELSE.test(clause);

/** True when the words before a phrase, or the whole clause around it, take the claim back. */
export const isTakenBack = (before: string, clause: string): boolean =>
  DENIED.test(before) || SUPPOSED.test(before) || isElsewhere(clause);

/** True for what is denied or not about this class; "when we get there" may still name what is next. */
export const isDenied = (before: string, clause: string): boolean => DENIED.test(before) || isElsewhere(clause);

/** The same for words in which "they" may be the hips or the knees. */
export const isOfAnotherDay = (before: string, clause: string): boolean =>
  DENIED.test(before) || ANOTHER_DAY.test(clause);
