/** The part of the independent WebVTT parser that the tests use; the package has no types of its own. */
declare module "node-webvtt" {
  interface ParsedCue {
    readonly identifier: string;
    readonly start: number;
    readonly end: number;
    readonly text: string;
  }
  const webvtt: {
    parse(text: string, options?: { strict?: boolean }): { valid: boolean; cues: ParsedCue[]; errors: unknown[] };
  };
  export default webvtt;
}
