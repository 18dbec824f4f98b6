/**
 * What is in the notebook, and is it safe? The pages of the notebook: sessions, series, noise, old
 * days brought in, keeping and copies, and what to do when the file is in trouble.
 *
 * <p>The window comes in. Models know properties and the desk; views know models. Never here: what
 * was on in a sealed session, SQL, a drawing that is not picture's.
 */
package blindlap.screen.book;
