package blindlap.wording.day;

/**
 * An item of the safety list, as a page shows it.
 *
 * @param key its name in the program
 * @param letter the key that ticks it
 * @param words its name on the page
 * @param yes true if it is confirmed
 */
public record SafetyRow(String key, String letter, String words, boolean yes) {}
