/**
 * Drawings for screen, page and paper: one drawing, three surfaces.
 *
 * <p>A {@link blindlap.plot.surface.Drawing} is made by a validating factory from plain records of
 * numbers and finished words. It draws with {@link blindlap.plot.surface.Ink}s, never with colours;
 * the {@link blindlap.plot.surface.Palette} of the {@link blindlap.plot.Surface} turns inks into
 * colours at draw time. Lengths are logical pixels at 100 % (96 to the inch), text sizes are
 * multiplied by a text scale, and text is measured by {@link blindlap.plot.surface.TextWidth}, so a
 * layout is the same on every surface.
 */
@NullMarked
package blindlap.plot;

import org.jspecify.annotations.NullMarked;
