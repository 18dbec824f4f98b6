/**
 * What does a setting mean on the bike? Sag, spring steps, progressive coils, leverage, clicks,
 * ballast and units, as numbers in and numbers out.
 *
 * <p>Plan, compute and the workshop page come in; this one imports only fault. Never here: a
 * maker's name or table, a recommendation to ride, a limit that nobody typed in.
 */
package blindlap.workshop;
