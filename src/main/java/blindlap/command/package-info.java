/**
 * What did the user type, and what is printed? One class per command: parse, one call on the desk,
 * print. Exit codes and what a complaint looks like are here too.
 *
 * <p>Only the root package comes in. Standard streams belong here and nowhere else. No rule and no
 * calculation may be here, for the window must be able to do what a command does; no secret may be
 * an argument, since arguments are seen by others and kept by shells; and no rounding, which is
 * wording's.
 */
package blindlap.command;
