/**
 * Holds the style sheets to the scales of `app/look.css`: what is written as a raw size, space, radius, weight of line,
 * colour or breakpoint fails. The grid of a drawing (width, height, inset, the columns of a grid) is its own.
 */
const ABSOLUTE = ["px", "rem", "in", "cm", "mm", "pt", "pc"];
const RAW = [...ABSOLUTE, "em", "ex", "ch", "%", "vw", "vh", "vmin", "vmax"];
const SPACES = "/^(padding|margin|gap|row-gap|column-gap)/";
const LINES = "/^(border|outline)/";

/** A phone, a tablet, a laptop: up to and from. In style sheets, and as the same numbers where a script asks. */
const UP_TO = ["759px", "999px", "1179px"];
const FROM = ["760px", "1000px", "1180px"];
/** A phone on its side. */
const LOW = ["500px"];

const units = (lengths) => ({
  [SPACES]: lengths,
  "/^(?!--).*radius$/": RAW,
  [LINES]: RAW.filter((unit) => unit !== "%"),
});
const breakpoints = (heights) => ({
  "max-width": UP_TO,
  "min-width": FROM,
  "max-height": heights,
  "min-height": [],
});

export default {
  reportNeedlessDisables: true,
  reportDescriptionlessDisables: true,
  rules: {
    "declaration-property-unit-disallowed-list": [
      units(RAW),
      { message: (property, unit) => `${property} in ${unit}: take it from the scales in app/look.css` },
    ],
    "declaration-property-value-allowed-list": [
      { "font-size": ["/^var\\(--size-(fine|tide|small|body|lead|title|great)\\)$/", "inherit"], font: ["inherit"] },
      { message: (property, value) => `${property}: ${value} is none of the sizes in app/look.css` },
    ],
    "declaration-property-value-disallowed-list": [
      {
        [SPACES]: ["/--space-[^0-6]/"],
        [LINES]: ["/\\b(thin|medium|thick)\\b/"],
        "/^(?!--)/": ["/#[0-9a-f]{3,8}\\b/i", "/\\b(rgb|rgba|hsl|hsla|hwb|lab|lch|oklab|oklch|color)\\(/"],
      },
      { message: (property, value) => `${property}: ${value} is not from the tokens in app/look.css` },
    ],
    "color-named": "never",
    // Else a breakpoint could be written in a way that the list below does not see.
    "media-feature-range-notation": "prefix",
    "media-feature-name-value-allowed-list": [
      breakpoints(LOW),
      { message: (name, value) => `${name}: ${value} is none of the three breakpoints (stylelint.config.mjs)` },
    ],
    "at-rule-disallowed-list": [
      ["container", "import"],
      { message: (name) => `@${name} has no place in these sheets` },
    ],

    // What is written but cannot be meant.
    "block-no-empty": true,
    "custom-property-no-missing-var-function": true,
    "declaration-block-no-duplicate-custom-properties": true,
    "declaration-block-no-duplicate-properties": true,
    "declaration-block-no-shorthand-property-overrides": true,
    "declaration-property-value-no-unknown": true,
    "media-feature-name-no-unknown": true,
    "property-no-unknown": true,
    "selector-pseudo-class-no-unknown": [true, { ignorePseudoClasses: ["global"] }],
  },
  overrides: [
    {
      // Read from afar: type as a share of the screen or of the type that script works out, and spaces as a share of it.
      files: ["app/floor/**/*.css", "app/_parts/coils/floor-coils.module.css"],
      rules: {
        "declaration-property-value-allowed-list": [
          {
            "font-size": [
              "/^var\\(--(size|floor)-[a-z]+\\)$/",
              "/var\\(--(main|side|figure|seconds|minutes|open|rest|acts|on)\\)/",
              "/^[\\d.]+vmin$/",
              "/^min\\([\\d.]+v[wh], [\\d.]+v[wh]\\)$/",
              "inherit",
            ],
            font: ["inherit"],
          },
        ],
        "declaration-property-unit-disallowed-list": [units(ABSOLUTE)],
        "media-feature-name-value-allowed-list": [breakpoints([...LOW, "699px", "879px"])],
      },
    },
    {
      // Paper is measured in millimetres.
      files: ["app/editions/**/print/*.css", "app/editions/**/crew/*.css"],
      rules: {
        "declaration-property-value-allowed-list": [
          { "font-size": ["/^var\\(--(type(-small|-title|-great)?|size-(fine|body))\\)$/"], font: ["inherit"] },
        ],
        "declaration-property-unit-disallowed-list": [units(RAW.filter((unit) => unit !== "mm"))],
      },
    },
  ],
};
