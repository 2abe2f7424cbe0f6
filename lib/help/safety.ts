/** What help says of safety beside the note that goes with every class. General; it refers to others and advises nobody. */
export const HELP_SAFETY = {
  lead: "Springline does arithmetic and reminds. It gives no medical advice, and it does not know who is in the room.",
  not: [
    "It does not say whether a class, a move or a load is right for a person. That is for them, their clinician and whoever leads the class.",
    "It does not inspect machines. It knows the springs as the studio has typed and measured them, not as they hang today.",
    "It does not replace the maker’s manual, local rules, insurance conditions or a licence to teach.",
    "It does not watch the class. A device shows what comes next; it cannot see that somebody has stopped.",
    "A signature on a plan says who read it and what the checks found then. It is no certificate of safety.",
    "A plan without findings is not a safe plan: it is one in which the rules found nothing.",
  ],
  does: [
    "It marks moves that ask for care and compares them with who is expected: each needs a safety line and a way round.",
    "It notices a spring that nobody is told to take off, a strap still on a foot, a spring changed with the carriage out.",
    "It keeps safety lines in the talk when there is too little time for all the words.",
    "Every rule names where its number comes from, or says that it is common practice without a source.",
  ],
} as const;
