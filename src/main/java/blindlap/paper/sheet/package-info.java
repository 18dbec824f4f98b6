/**
 * What is a sheet drawn with? Formats, the pen, the font, and pages that follow one another with
 * head and cautions. Every sheet uses it, also the rider's.
 *
 * <p>All of {@code paper} comes in. It imports {@code plan}, {@code plot} and {@code wording.day}.
 * Never here: a session, a key or a finding. A sheet that shows one brings it along as words.
 */
@NullMarked
package blindlap.paper.sheet;

import org.jspecify.annotations.NullMarked;
