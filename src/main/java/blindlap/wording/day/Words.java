package blindlap.wording.day;

import java.math.BigInteger;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sentences from the resource bundles. Every text a person reads comes from here as a whole
 * sentence; arguments are put in already rounded, and as {@link Shown} shows them.
 */
public final class Words {
  private static final Pattern LONG = Pattern.compile("[0-9]{4,}");
  private static final Pattern COUNTED = Pattern.compile("\\[(\\d)\\|([^|\\]]*)\\|([^\\]]*)]");

  private final ResourceBundle bundle;

  private Words(String name) {
    this.bundle = ResourceBundle.getBundle("blindlap.wording." + name, Locale.ROOT);
  }

  /** The bundle of a name, such as "cautions". */
  public static Words of(String bundle) {
    return new Words(bundle);
  }

  /** True if the bundle has this key. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }

  /** All keys of the bundle. */
  public java.util.Set<String> keys() {
    return bundle.keySet();
  }

  /**
   * A sentence with its arguments. "{0} [0|lap|laps]" is "1 lap", "2 laps" or "1,000 laps": what a
   * word is chosen by is a count, so that its thousands are set off.
   *
   * @throws java.util.MissingResourceException if there is no such key
   */
  public String say(String key, Object... arguments) {
    String template = bundle.getString(key);
    if (plain(template)) {
      return template;
    }
    String[] texts = new String[arguments.length];
    for (int i = 0; i < texts.length; i++) {
      String text = Shown.text(String.valueOf(arguments[i]));
      texts[i] = template.contains("[" + i + "|") ? setOff(text) : text;
    }
    return new MessageFormat(counted(template, texts), Locale.ROOT).format(texts);
  }

  /**
   * A sentence with its places, for whoever puts the details in elsewhere: "{0} [0|lap|laps]".
   *
   * @throws java.util.MissingResourceException if there is no such key
   */
  public String pattern(String key) {
    return bundle.getString(key).replace("''", "'");
  }

  /** A text that holds none of the signs of a pattern says itself; lists have thousands of them. */
  private static boolean plain(String template) {
    return template.indexOf('{') < 0 && template.indexOf('\'') < 0 && template.indexOf('[') < 0;
  }

  private static String setOff(String count) {
    return LONG.matcher(count).matches() ? Figures.count(new BigInteger(count)) : count;
  }

  /** Chooses the word after a number: the first where the argument is 1, else the second. */
  private static String counted(String template, String[] texts) {
    return COUNTED
        .matcher(template)
        .replaceAll(
            found -> {
              int argument = Integer.parseInt(found.group(1));
              boolean one = argument < texts.length && texts[argument].equals("1");
              return Matcher.quoteReplacement(found.group(one ? 2 : 3));
            });
  }
}
