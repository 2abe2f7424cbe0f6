/**
 * The words that `count-syllables.ts` gets wrong, by their number of syllables. With both, the 10,789 most used English
 * words that are in the CMU Pronouncing Dictionary (public domain), and the words of this trade, are counted as that
 * dictionary has them. Most used: sizes 10 and 20 of SCOWL, the Spell Checker Oriented Word Lists (Kevin Atkinson and
 * others). Of several pronunciations the dictionary's first is taken.
 */
const BY_SYLLABLES: Readonly<Record<number, string>> = {
  1: `
    crawled dire plagued plagues plea prayer prayers priest queue queues real realm realms sea tea`,
  2: `
    admire argue awfully beings bizarre boredom brilliant business carriage catholic cc centres chocolate choir
    colleagues creature creatures cruel desperate elsewhere embed evening evenings expire expired farewell fibres
    firework fireworks flour fluent fluid forest forests framework fuel garbling gateway genius gorgeous guideline
    guidelines guinea hatred henceforth hereby hour hours household hundred ids ines inquire inspire inspires interest
    interests ion lawyer lawyers legged lifestyle lifetime likewise lion marriage maybe metres naive naked nineteen
    ninety nuisance ok oneself opera operas our ours people peoples pigeon pipeline plaguing pm poem poems poet poets
    privilege privileged queuing rattling really rely retire retired retires reuse rhythm ruin ruined ruins sacred
    safeguard safeguards safety salesman science several sideways soldier somehow someone someplace something sometime
    sometimes somewhat somewhere spokesman startling th theorem theorems theories theory thereby therefore thereof
    transient ts typeset tyres vaguely warehouse whereby wicked widespread wretched`,
  3: `
    albeit alien aliens anyone archaic areas atheist atheists audience averages axiom axioms baffling barriers
    beautifully behavior behaviour boolean brilliantly businesses carriages casual catalogues caveat champion
    changeover civilian coincide convenient cycling cyclist cyclists deity demented differently elaborate especially
    everyday everything everywhere familiar forever gentleman heroic heroin ideas increment inertia influence
    influenced ingenious interested interesting likelihood linear mangling moreover muddling museum museums nostalgia
    nuclear ourselves outrageous parliament peculiar poetic poetry principally privileges puzzling ratios rearrange
    rearranged reassure reassured reassures recipe recipes recovery reinstate ruining sciences scientist scientists
    sexual shareholder shareholders simpler solely somebody struggling subtly suicide suppliers suspicion temperature
    temperatures theater theatre tidewater timetable typesetting typewriter usual vegetable vegetables visual w
    whoever`,
  4: `
    advantageous aforementioned algebraic algorithm algorithms ambiguous apostrophe arguable arguably audiences
    campione centimetres coincidence complementary conspicuous controversial conveniently coordinate coordinates
    criticisms desiring elementary emotionally entirely evaluate evaluates everybody experience experienced
    foreseeable geography geology geometry hierarchy inconvenient influences influencing influential initiative
    inquiries inquiring laboratory mechanisms millimetres negotiable nevertheless physically qualifiers realisation
    realization rearranging reassuring recycling reinstated reinstating reiterate requiring retirement satisfactory
    scientific sexually suicidal technically unfamiliar uninteresting unrealistic unreasonable unusual usually
    whatsoever wholeheartedly`,
  5: `
    ambiguities ambiguity coordination evaluated evaluating evaluation experiences experiencing familiarity
    geographical historically homosexual idealistic identifiers inexperienced intrinsically physiology politically
    satisfactorily sexuality speciality unambiguous unusually`,
  6: `
    electronically extraordinarily heterosexual mathematically periodically scientifically theoretically`,
  7: `
    confidentiality homosexuality`,
};

/**
 * Words of this trade that the dictionary lacks, or that it reads as letters ("abs"), where the counter is wrong: as common
 * English dictionaries divide them, from memory.
 */
const OF_THE_TRADE: Readonly<Record<number, string>> = {
  1: "abs",
  2: "psoas teres",
  3: "fascia gluteal gluteus peronei quadruped quadrupeds soleus",
  4: "perineum peroneals scoliosis",
  5: "iliopsoas",
};

/** Syllables by word; words are lower case, letters only. */
export const DIFFERENT: ReadonlyMap<string, number> = new Map(
  [...Object.entries(BY_SYLLABLES), ...Object.entries(OF_THE_TRADE)].flatMap(([syllables, words]) =>
    words
      .trim()
      .split(/\s+/)
      .map((word): [string, number] => [word, Number(syllables)]),
  ),
);
