package blindlap.plot.surface;

/** What a colour is for. Drawings name inks; a {@link Palette} says which colour that is today. */
public enum Ink {
  /** The page. */
  PAPER,
  /** Fields and buttons. */
  SHEET,
  /** Everything that is said. */
  INK,
  /** What is said more quietly. */
  SECOND,
  /** Decoration lines. */
  RULE,
  /** Grid lines; a palette may leave them out. */
  FAINT,
  /** The one stroke that means "look here". */
  HIGHLIGHT,
  /** Text on the stroke. */
  ON_HIGHLIGHT,
  /** Fill of the rider noise band. */
  NOISE,
  /** Lines of the hatching that means "too small to matter". */
  HATCH,
  /** First setup. */
  A,
  /** Second setup. */
  B,
  /** Third setup. */
  C,
  /** Fourth setup. */
  D,
  /** Dark modules of a printed code: dark in every palette, because a reader needs it. */
  CODE_DARK,
  /** Quiet zone of a printed code: light in every palette. */
  CODE_LIGHT
}
