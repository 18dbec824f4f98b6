/**
 * How is a sheet of paper filled? Formats, margins, one font that is embedded, a pen that writes
 * lines and rules, and the flow over pages.
 *
 * <p>The sheets of paper and of the ride come in. Never here: what a sheet says. It knows no
 * session and no key, so that a sheet for the rider can be seen to hold nothing but what it was
 * handed.
 */
package blindlap.paper.sheet;
