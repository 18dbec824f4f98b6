/**
 * What can be drawn on? Pen, inks, lines, hatching, measured text, and the three surfaces: the
 * screen's canvas, SVG, and through SVG the PDF. Text sizes are multiplied by a text scale and text
 * is measured by one class, so that a layout is the same on every surface.
 *
 * <p>The drawings of plot, and whoever shows them, come in. JavaFX is allowed here for the canvas
 * and its fonts, not for a scene. Never here: what a drawing is about.
 */
package blindlap.plot.surface;
