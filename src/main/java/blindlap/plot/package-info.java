/**
 * What does a picture look like? One drawing for screen, page and paper.
 *
 * <p>A {@link blindlap.plot.surface.Drawing} is made by a validating factory from plain records of
 * numbers and finished words. It draws with {@link blindlap.plot.surface.Ink}s, never with colours;
 * the {@link blindlap.plot.surface.Palette} of the {@link blindlap.plot.surface.Surface} turns inks
 * into colours at draw time. Lengths are logical pixels at 100 % (96 to the inch).
 *
 * <p>Picture, paper and the pages come in. Never here: a finding, a session, a sentence, a toolkit.
 */
@NullMarked
package blindlap.plot;

import org.jspecify.annotations.NullMarked;
