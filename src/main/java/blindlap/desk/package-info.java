/**
 * What can be done with Blindlap? One class per use case, shared by window and command line, so
 * that both can do the same and refuse the same. A use case names its collaborators in its
 * constructor; it answers with a result or a problem, and what a user may well do is no exception.
 *
 * <p>Command, screens, sample days and the root package come in. Never here: JavaFX, SQL, standard
 * streams, a sentence made of pieces. The notebook is known by its port only.
 */
package blindlap.desk;
