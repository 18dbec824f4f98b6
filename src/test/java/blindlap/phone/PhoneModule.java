package blindlap.phone;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.mozilla.javascript.Context;
import org.mozilla.javascript.Function;
import org.mozilla.javascript.NativeJSON;
import org.mozilla.javascript.ScriptableObject;

/**
 * A module of the phone's pages that touches neither page nor network, run inside this virtual
 * machine as it is served: only {@code export} is taken out.
 */
public final class PhoneModule implements AutoCloseable {
  private final Context context;
  private final ScriptableObject scope;

  /** The module of a name, such as "day". */
  public PhoneModule(String name) {
    this(name, text(name));
  }

  PhoneModule(String name, String source) {
    context = Context.enter();
    context.setLanguageVersion(Context.VERSION_ECMASCRIPT);
    scope = context.initStandardObjects();
    context.evaluateString(
        scope, source.replaceAll("(?m)^export (?=const|function)", ""), name + ".js", 1, null);
  }

  /** The text that is served. */
  static String text(String name) {
    try (InputStream in =
        Objects.requireNonNull(
            PhoneModule.class.getResourceAsStream("/blindlap/phone/" + name + ".js"), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Calls a function of the module. */
  public Object call(String function, Object... arguments) {
    Object found = scope.get(function, scope);
    if (found == ScriptableObject.NOT_FOUND) { // a constant of a script stands in no property
      found = context.evaluateString(scope, function, "name", 1, null);
    }
    return ((Function) found).call(context, scope, scope, arguments);
  }

  /** A value of the module from JSON. */
  public Object value(String json) {
    return NativeJSON.parse(
        context, scope, json, (cx, s, self, args) -> args[1]); // a reviver that changes nothing
  }

  /** A value of the module as JSON. */
  public String json(Object value) {
    return String.valueOf(NativeJSON.stringify(context, scope, value, null, null));
  }

  @Override
  public void close() {
    Context.exit();
  }
}
