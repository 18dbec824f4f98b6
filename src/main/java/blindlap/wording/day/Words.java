package blindlap.wording.day;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * Sentences from the resource bundles. Every text a person reads comes from here as a whole
 * sentence; arguments are put in as they are, already rounded.
 */
public final class Words {
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
   * A sentence with its arguments.
   *
   * @throws java.util.MissingResourceException if there is no such key
   */
  public String say(String key, Object... arguments) {
    MessageFormat format = new MessageFormat(bundle.getString(key), Locale.ROOT);
    String[] texts = new String[arguments.length];
    for (int i = 0; i < texts.length; i++) {
      texts[i] = String.valueOf(arguments[i]);
    }
    return format.format(texts);
  }
}
