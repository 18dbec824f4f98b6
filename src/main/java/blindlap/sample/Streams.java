package blindlap.sample;

import java.util.Random;

/** Streams of random numbers for the parts of a day, each the same whatever the others draw. */
final class Streams {
  private Streams() {}

  static Random of(long seed, long part) {
    long mixed = seed * 0x9E3779B97F4A7C15L + part * 0xBF58476D1CE4E5B9L;
    mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L;
    mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
    return new Random(mixed ^ (mixed >>> 31));
  }
}
