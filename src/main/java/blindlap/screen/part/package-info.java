/**
 * The parts that pages are built of: JavaFX in code, looks in style sheets, no decisions. A part
 * takes finished words and callbacks; what they mean is decided elsewhere.
 */
@NullMarked
package blindlap.screen.part;

import org.jspecify.annotations.NullMarked;
